import './line-number.css';

/** The number by which a line of a list is called when it is asked for by voice. */
export const LineNumber = ({ number }: { readonly number: number | null }) =>
  number === null ? null : <span class="line-number">{number} </span>;
