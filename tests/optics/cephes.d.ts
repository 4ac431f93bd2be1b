// The package has declarations for another way of importing it; these are the functions that the tests compare with.
declare module 'cephes' {
  export const compiled: Promise<unknown>;
  export function erf(x: number): number;
  export function j0(x: number): number;
}
