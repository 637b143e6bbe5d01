declare module '*.css';
/** The address of a file that the bundle carries along. */
declare module '*?url' {
  const address: string;
  export default address;
}
