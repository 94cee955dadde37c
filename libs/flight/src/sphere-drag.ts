/**
 * Drag coefficient of a smooth sphere by Reynolds number: the correlation of F. A. Morrison, "An Introduction to
 * Fluid Mechanics" (2013). Fitted up to a Reynolds number of 10⁶, which a shot (10⁵) stays well below.
 */
export function smoothSphereDrag(reynolds: number): number {
  const creeping = 24 / reynolds;
  const middle = (2.6 * (reynolds / 5)) / (1 + (reynolds / 5) ** 1.52);
  const scaled = reynolds / 2.63e5;
  const crisis = (0.411 * scaled ** -7.94) / (1 + scaled ** -8);
  const beyond = (0.25 * (reynolds / 1e6)) / (1 + reynolds / 1e6);
  return creeping + middle + crisis + beyond;
}
