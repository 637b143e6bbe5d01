declare module '*.tsv?raw' {
  const text: string;
  export default text;
}
