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
