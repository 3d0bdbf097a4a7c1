declare module 'virtual:acknowledgements' {
  const acknowledgements: readonly { readonly name: string; readonly licence: string; readonly text: string }[];
  export default acknowledgements;
}
