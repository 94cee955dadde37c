/** What is used of jstat, which brings no types of its own. */
declare module 'jstat' {
  interface LocationScale {
    cdf(x: number, mean: number, sd: number): number;
    inv(p: number, mean: number, sd: number): number;
  }
  interface ByFreedom {
    cdf(x: number, freedom: number): number;
    inv(p: number, freedom: number): number;
  }
  interface Beta {
    inv(p: number, a: number, b: number): number;
  }
  const jStat: {
    readonly normal: LocationScale;
    readonly studentt: ByFreedom;
    readonly chisquare: ByFreedom;
    readonly beta: Beta;
  };
  export default jStat;
}
