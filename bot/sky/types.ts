/** The words the sky core speaks in: plain readonly data, degrees, hours and UTC milliseconds; it knows no names and no clock. */

/** An instant: milliseconds since 1970-01-01T00:00:00Z, UTC (as `Date.getTime`). UT1 − UTC is taken as 0. */
export type UtcMs = number;

/** A place on Earth. */
export interface Observer {
  /** Geodetic latitude, −90..90, north positive. */
  readonly latitudeDeg: number;
  /** Longitude, −180..180, east positive. */
  readonly longitudeDeg: number;
  /** Height above mean sea level in metres. */
  readonly elevationM: number;
}

/** A direction by right ascension (0..24 h) and declination (−90..90°); the frame is said where it is used. */
export interface Equatorial {
  readonly raHours: number;
  readonly decDeg: number;
}

/** A direction in the observer's sky: altitude −90..90°, azimuth 0..360° from north through east. */
export interface Horizontal {
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
}

/** The Sun, the Moon and the planets, spelt as astronomy-engine spells them. */
export type SolarSystemBody =
  'Sun' | 'Moon' | 'Mercury' | 'Venus' | 'Mars' | 'Jupiter' | 'Saturn' | 'Uranus' | 'Neptune' | 'Pluto';

/** A direction fixed among the stars, but for proper motion: ICRS/J2000 at epoch J2000.0. */
export interface FixedBody {
  readonly kind: 'fixed';
  readonly raHoursJ2000: number;
  readonly decDegJ2000: number;
  /** Proper motion in right ascension, times cos(declination), in milliarcseconds a Julian year. */
  readonly pmRaCosDecMasPerYear?: number;
  /** Proper motion in declination, in milliarcseconds a Julian year. */
  readonly pmDecMasPerYear?: number;
  /** Annual parallax in milliarcseconds; absent or 0 where unknown. */
  readonly parallaxMas?: number;
}

/** How bright a small body is: the laws of the Minor Planet Center's lists. */
export type MagnitudeLaw =
  /** H, G of minor planets (E. Bowell et al., Asteroids II, 1989). */
  | { readonly law: 'minor-planet'; readonly absolute: number; readonly slope: number }
  /** m = H + 5 log Δ + 2.5 K log r of comets. */
  | { readonly law: 'comet'; readonly absolute: number; readonly slope: number };

/** An orbit round the Sun by two-body motion: elements at an epoch, ecliptic and equinox J2000. */
export interface OrbitalElements {
  /** Perihelion passage, days of TT since J2000.0. */
  readonly perihelionTtDays: number;
  /** More than 0. */
  readonly perihelionDistanceAu: number;
  /** 0..1 ellipse, 1 parabola, more a hyperbola. */
  readonly eccentricity: number;
  readonly inclinationDeg: number;
  readonly ascendingNodeDeg: number;
  readonly perihelionArgumentDeg: number;
  /** The instant the elements are right for, days of TT since J2000.0; null where the list does not say. */
  readonly epochTtDays: number | null;
  readonly magnitude: MagnitudeLaw | null;
}

/** A comet or a minor planet. */
export interface OrbitBody {
  readonly kind: 'orbit';
  readonly elements: OrbitalElements;
}

/** What moves among the stars. */
export type MovingBody = OrbitBody | { readonly kind: 'solarSystem'; readonly body: SolarSystemBody };

/** Anything whose place can be computed. */
export type SkyBody = FixedBody | MovingBody;

/** Where a body is for an observer at an instant. */
export interface Place {
  /** Astrometric, ICRS/J2000, topocentric for Sun, Moon and planets; proper motion applied to the date. */
  readonly j2000: Equatorial;
  /** Apparent: true equator and equinox of date, topocentric, with aberration. */
  readonly ofDate: Equatorial;
  /** Airless altitude in degrees. */
  readonly altitudeDeg: number;
  /** Refracted altitude in degrees (1010 hPa, 10 °C). */
  readonly apparentAltitudeDeg: number;
  /** Degrees from north through east, 0..360. */
  readonly azimuthDeg: number;
  /** Local hour angle, −12..12 h, west positive. */
  readonly hourAngleHours: number;
}
