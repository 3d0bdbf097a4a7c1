export const pageScript = (name: string): string => new URL(`./page/${name}`, import.meta.url).pathname;
