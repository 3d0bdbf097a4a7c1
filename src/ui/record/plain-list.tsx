import { ScrollArea } from '../scroll-area';

/** A table whose cells are words ready to show. */
export type PlainTable = {
  readonly say: string;
  readonly columns: readonly string[];
  readonly rows: readonly { readonly key: string; readonly cells: readonly string[] }[];
};

export function PlainList({ list }: { readonly list: PlainTable }) {
  return (
    <ScrollArea class="bolts" label={list.say}>
      <table class="bolts-table">
        <thead>
          <tr>
            {list.columns.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {list.rows.map((row) => (
            <tr key={row.key}>
              {row.cells.map((cell, i) => (
                <td key={list.columns[i] ?? i}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollArea>
  );
}
