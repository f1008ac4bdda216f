/** The IANA time zone at a position, offline. */
import tzLookup from '@photostructure/tz-lookup';

/** IANA zone name; at sea "Etc/GMT±N". Latitude −90..90, longitude −180..180; RangeError outside. */
export const timeZoneAt = (latitudeDeg: number, longitudeDeg: number): string => {
  return tzLookup(latitudeDeg, longitudeDeg);
};
