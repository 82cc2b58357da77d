/** The package has declarations, but its `exports` hide them from a module. Only what is used here. */
declare module 'cephes' {
  /** Settled at once on Node; elsewhere when the WebAssembly is compiled. */
  export const compiled: Promise<void>;
  /** Inverse of the regularised incomplete beta function. */
  export function incbi(a: number, b: number, share: number): number;
  /** Natural logarithm of the gamma function. */
  export function lgam(x: number): number;
  /** Standard normal distribution and its inverse. */
  export function ndtr(z: number): number;
  export function ndtri(share: number): number;
}
