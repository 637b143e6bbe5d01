declare module '*.css';
/** The address of a file that the bundle carries along. */
declare module '*?url' {
  const address: string;
  export default address;
}
/** The same of a script with a scope of its own. */
declare module '*?worker&url' {
  const address: string;
  export default address;
}
/** What the bundle says of itself. */
interface ImportMeta {
  readonly env: { readonly PROD: boolean };
}
/** The address of a file that stays a file, however small: a page may fetch no other. */
declare module '*?url&no-inline' {
  const address: string;
  export default address;
}
