// What the package exports, as far as the tests compare with it: its own declarations are not reachable by an import.
declare module 'cephes' {
  export const compiled: Promise<unknown>;
  export function erf(x: number): number;
  export function igam(a: number, x: number): number;
  export function j0(x: number): number;
  /** Student's t of `degrees` degrees of freedom that a share `p` of draws stays below. */
  export function stdtri(degrees: number, p: number): number;
}
