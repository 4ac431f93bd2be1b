/** A page of the notebook, bundled as text. */
declare module '*.plate' {
  const text: string;
  export default text;
}
