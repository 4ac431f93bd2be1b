interface Nested<M> { readonly children: readonly M[] }
/** The marks of a picture and all that lie in them, each before what lies in it. */
export const all = <M extends Nested<M>>(marks: readonly M[]): M[] => marks.flatMap(m => [m, ...all(m.children)]);
