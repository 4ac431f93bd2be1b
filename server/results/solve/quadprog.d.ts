/** Minimises −dᵀb + ½bᵀDb under Aᵀb ≥ b₀ (Goldfarb and Idnani 1983). All arrays count from 1; the arrays are overwritten. */
declare module 'quadprog' {
  export function solveQP(D: number[][], d: number[], A: number[][], b0: number[], meq?: number): { readonly solution: number[]; readonly message: string };
}
