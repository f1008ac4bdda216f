/** Islands that observers name and that are no town of the gazetteer. */
import { countryName } from './countries.js';
import { foldPlace } from './fold-place.js';
import type { PlaceRecord } from './site-resolution.js';
import { timeZoneAt } from './time-zone-at.js';

type Island = readonly [
  name: string,
  region: string,
  countryCode: string,
  latitudeDeg: number,
  longitudeDeg: number,
  population: number,
  otherNames: string,
];

/** From memory: positions near the middle, to some hundredths of a degree; people in round numbers, for their order alone. */
const ISLANDS: readonly Island[] = [
  ['La Palma', 'Canary Islands', 'ES', 28.7, -17.87, 83000, 'lapalmaisland'],
  ['Tenerife', 'Canary Islands', 'ES', 28.3, -16.55, 930000, ''],
  ['Gran Canaria', 'Canary Islands', 'ES', 27.95, -15.6, 860000, 'grancanary'],
  ['Lanzarote', 'Canary Islands', 'ES', 29.03, -13.63, 155000, ''],
  ['Fuerteventura', 'Canary Islands', 'ES', 28.4, -14.0, 120000, ''],
  ['La Gomera', 'Canary Islands', 'ES', 28.12, -17.23, 22000, ''],
  ['El Hierro', 'Canary Islands', 'ES', 27.73, -18.02, 11000, ''],
  ['Mallorca', 'Balearic Islands', 'ES', 39.6, 2.95, 920000, 'majorca'],
  ['Menorca', 'Balearic Islands', 'ES', 39.97, 4.08, 96000, 'minorca'],
  ['Ibiza Island', 'Balearic Islands', 'ES', 38.98, 1.43, 150000, 'eivissa'],
  ['Madeira', 'Madeira', 'PT', 32.75, -17.0, 250000, ''],
  ['Isle of Wight', 'England', 'GB', 50.68, -1.3, 140000, 'wight'],
  ['Isles of Scilly', 'England', 'GB', 49.92, -6.3, 2200, 'scilly,scillyisles,scillies'],
  ['Lundy', 'England', 'GB', 51.18, -4.67, 30, 'lundyisland'],
  ['Anglesey', 'Wales', 'GB', 53.28, -4.35, 69000, 'isleofanglesey,ynysmon'],
  ['Isle of Skye', 'Scotland', 'GB', 57.3, -6.25, 10000, 'skye'],
  ['Isle of Mull', 'Scotland', 'GB', 56.45, -6.0, 2800, 'mull'],
  ['Isle of Islay', 'Scotland', 'GB', 55.77, -6.2, 3200, 'islay'],
  ['Isle of Arran', 'Scotland', 'GB', 55.58, -5.25, 4600, 'arran'],
  ['Isle of Coll', 'Scotland', 'GB', 56.63, -6.55, 170, 'coll'],
  ['Isle of Lewis', 'Scotland', 'GB', 58.2, -6.6, 18500, 'lewis,lewisandharris,outerhebrides,westernisles,hebrides'],
  ['Orkney', 'Scotland', 'GB', 59.0, -3.1, 22000, 'orkneyislands,orkneys'],
  ['Shetland', 'Scotland', 'GB', 60.3, -1.3, 23000, 'shetlandislands,shetlands'],
  ['Isle of Man', '', 'IM', 54.23, -4.55, 84000, 'mann'],
  ['Guernsey', '', 'GG', 49.46, -2.58, 64000, ''],
  ['Jersey', '', 'JE', 49.21, -2.13, 104000, ''],
  ['Sark', '', 'GG', 49.43, -2.36, 500, ''],
  ['Alderney', '', 'GG', 49.71, -2.2, 2100, ''],
  ['Faroe Islands', '', 'FO', 62.0, -6.9, 54000, 'faroes'],
  ['Svalbard', '', 'SJ', 78.22, 15.65, 2900, 'spitsbergen'],
  ['Lofoten', 'Nordland', 'NO', 68.2, 14.0, 24000, 'lofotenislands'],
  ['Gotland', 'Gotland', 'SE', 57.5, 18.5, 61000, ''],
  ['Bornholm', 'Capital Region', 'DK', 55.13, 14.92, 39000, ''],
  ['Corsica', 'Corsica', 'FR', 42.15, 9.1, 350000, 'corse'],
  ['Sardinia', 'Sardinia', 'IT', 40.1, 9.0, 1590000, 'sardegna'],
  ['Sicily', 'Sicily', 'IT', 37.5, 14.0, 4800000, 'sicilia'],
  ['Crete', 'Crete', 'GR', 35.24, 24.9, 620000, 'kriti'],
  ['Rhodes Island', 'South Aegean', 'GR', 36.2, 28.0, 125000, 'rodos'],
  ['Corfu Island', 'Ionian Islands', 'GR', 39.6, 19.8, 100000, 'kerkyra'],
  ['Santorini', 'South Aegean', 'GR', 36.4, 25.43, 15500, 'thira'],
  ['Reunion', 'Réunion', 'RE', -21.1, 55.53, 860000, 'lareunion,reunionisland'],
  ['Hawaii Island', 'Hawaii', 'US', 19.6, -155.5, 200000, 'bigisland,thebigisland,maunakea'],
  ['Maui', 'Hawaii', 'US', 20.8, -156.33, 165000, ''],
  ['Oahu', 'Hawaii', 'US', 21.47, -157.97, 1000000, ''],
  ['Kauai', 'Hawaii', 'US', 22.05, -159.53, 73000, ''],
  ['Nantucket Island', 'Massachusetts', 'US', 41.28, -70.08, 14000, ''],
  ['Vancouver Island', 'British Columbia', 'CA', 49.65, -125.45, 860000, ''],
  ['Prince Edward Island', 'Prince Edward Island', 'CA', 46.4, -63.2, 155000, 'pei'],
  ['Tasmania', 'Tasmania', 'AU', -42.0, 146.6, 570000, 'tassie'],
  ['Kangaroo Island', 'South Australia', 'AU', -35.8, 137.2, 5000, ''],
  ['Stewart Island', 'Southland', 'NZ', -46.9, 168.1, 450, 'rakiura'],
  ['Great Barrier Island', 'Auckland', 'NZ', -36.2, 175.4, 1250, 'aotea'],
  ['Bali', 'Bali', 'ID', -8.37, 115.13, 4300000, ''],
  ['Okinawa Island', 'Okinawa', 'JP', 26.5, 127.93, 1400000, ''],
  ['Ishigaki Island', 'Okinawa', 'JP', 24.42, 124.17, 48000, ''],
  ['Zanzibar Island', 'Zanzibar', 'TZ', -6.13, 39.35, 900000, 'unguja'],
];

const byName = new Map<string, Island[]>();
for (const island of ISLANDS) {
  const [name, , , , , , otherNames] = island;
  const bare = name.replace(/ Island$/u, '');
  for (const key of new Set([foldPlace(name), foldPlace(bare), ...otherNames.split(',')]))
    if (key !== '') byName.set(key, [...(byName.get(key) ?? []), island]);
}

/** Islands of a folded name; sea level, as the height hangs on where one stands. */
export const islandsNamed = (foldedName: string): readonly PlaceRecord[] =>
  (byName.get(foldedName) ?? []).map(([name, region, countryCode, latitudeDeg, longitudeDeg, population]) => ({
    name,
    district: '',
    region,
    regionCode: '',
    countryCode,
    country: countryName(countryCode),
    latitudeDeg,
    longitudeDeg,
    elevationM: 0,
    population,
    zone: timeZoneAt(latitudeDeg, longitudeDeg),
  }));
