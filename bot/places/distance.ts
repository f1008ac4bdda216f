/** How far apart two places on the Earth are. */

/** Degrees, north and east positive. */
export interface Spot {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

const EARTH_RADIUS_KM = 6371;
const RAD = Math.PI / 180;

/** Along a great circle of a round Earth (haversine formula), in kilometres. */
export const distanceKm = (a: Spot, b: Spot): number => {
  const half = (fromDeg: number, toDeg: number): number => Math.sin(((toDeg - fromDeg) / 2) * RAD) ** 2;
  const h =
    half(a.latitudeDeg, b.latitudeDeg) +
    Math.cos(a.latitudeDeg * RAD) * Math.cos(b.latitudeDeg * RAD) * half(a.longitudeDeg, b.longitudeDeg);
  return 2 * EARTH_RADIUS_KM * Math.asin(Math.min(1, Math.sqrt(h)));
};
