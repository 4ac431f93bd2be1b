/** What the tests use of js-quantities 1.8, which comes without types. */
declare module 'js-quantities' {
  interface Quantity {
    readonly scalar: number;
    /** in SI base units and radians */
    readonly baseScalar: number;
    to(unit: string): Quantity;
    isCompatible(other: Quantity): boolean;
  }
  export default function Qty(value: number, unit: string): Quantity;
}
