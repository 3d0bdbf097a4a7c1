/** On the left head gasket, from the question at the gasket to the first bolt of the first pass done. */
export const FROM_THE_GASKET: readonly string[] = [
  'it reads printed face to the radiator',
  'this step is done',
  'this step is done',
  'i have the time',
  'set at thirty',
  'bolt one done',
];

/** The same from the first step of the document. */
export const TO_THE_FIRST_PASS: readonly string[] = [
  ...Array.from({ length: 5 }, () => 'this step is done'),
  ...FROM_THE_GASKET,
];
