/** The package ships without types; this is the part used here. */
declare module 'magvar' {
  export const MODEL_EPOCH: number;
  export const MODEL_VALID_UNTIL: number;
  /** Latitude and longitude in degrees, north and east positive; height in kilometres. Declination to 0.01°, intensities in nanotesla. */
  export function calculateMagneticField(
    decimalYear: number,
    latitude: number,
    longitude: number,
    altitudeKm?: number,
  ): {
    readonly declination: number;
    readonly h: number;
  };
}
