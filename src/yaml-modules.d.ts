declare module '*.yaml' {
  const data: unknown;
  export default data;
}
declare module '*.yaml?first' {
  const data: unknown;
  export default data;
}
declare module '*.yaml?later' {
  const data: unknown;
  export default data;
}
