/** What one utterance passed on its way to an answer; all times in milliseconds of one clock. */
export type Edges = {
  readonly answers: readonly {
    readonly type: string;
    readonly words: string;
    readonly watched: { readonly endpoint: number; readonly decoded: number };
    readonly arrived: number;
  }[];
  readonly written: readonly number[];
  readonly asked: readonly { readonly at: number; readonly text: string }[];
  readonly rendered: readonly number[];
  readonly played: readonly number[];
  readonly speechEnd: number;
  readonly replyBegin: number | null;
};

export const PARTS = ['endpoint', 'decode', 'decide', 'synthesise', 'play'] as const;
export type Part = (typeof PARTS)[number];

/** `isReady`: the reply had been rendered before the words were heard. Times in milliseconds; the parts sum to `all`. */
export type Measured = { readonly isReady: boolean; readonly all: number } & Readonly<Record<Part, number>>;

/** The five parts of one answer, or why there is nothing to measure. */
export function partsOf(edges: Edges): Measured | string {
  const answer = edges.answers.findLast(({ type }) => type === 'heard');
  if (!answer) return edges.answers.length > 0 ? 'refused' : 'not noticed';
  const played = edges.played.find((at) => at >= answer.arrived);
  if (edges.replyBegin === null || played === undefined) return 'answered without words';
  const within = (at: number): boolean => at >= answer.arrived && at <= played;
  const asked = edges.asked.filter(({ at }) => within(at));
  const rendered = edges.rendered.filter(within);
  // A reply may be rendered while the log is being written: only what is still waited for then is its own part.
  const isRendered = asked.length > 0 && rendered.length > 0;
  const decided = isRendered ? (edges.written.filter(within).at(-1) ?? asked[0]?.at ?? played) : played;
  const { endpoint, decoded } = answer.watched;
  return {
    isReady: !isRendered,
    all: edges.replyBegin - edges.speechEnd,
    endpoint: endpoint - edges.speechEnd,
    decode: decoded - endpoint,
    decide: decided - decoded,
    synthesise: played - decided,
    play: edges.replyBegin - played,
  };
}

/** The value that so great a share of all lies at or under (nearest rank); NaN of nothing. */
export function percentile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}
