/**
 * Counties and the like of Great Britain and Northern Ireland, which people name as where they are and which are no towns; each with a town in
 * it to take instead. Common knowledge, no source; those called as a town is (Durham, Bedford, York) are left out, as the town is meant.
 */
import { foldPlace } from './fold-place.js';

const COUNTY_TOWNS: readonly (readonly [string, string])[] = [
  ['Aberdeenshire', 'Aberdeen, Scotland'],
  ['Anglesey', 'Holyhead, Wales'],
  ['Bedfordshire', 'Bedford, England'],
  ['Berkshire', 'Reading, England'],
  ['Buckinghamshire', 'Aylesbury, England'],
  ['Cambridgeshire', 'Cambridge, England'],
  ['Cheshire', 'Chester, England'],
  ['Cornwall', 'Truro, England'],
  ['Cotswolds', 'Cirencester, England'],
  ['County Durham', 'Durham, England'],
  ['Cumbria', 'Penrith, England'],
  ['Derbyshire', 'Matlock, England'],
  ['Devon', 'Exeter, England'],
  ['Dorset', 'Dorchester, England'],
  ['East Anglia', 'Norwich, England'],
  ['East Sussex', 'Lewes, England'],
  ['Essex', 'Chelmsford, England'],
  ['Fife', 'Glenrothes, Scotland'],
  ['Gloucestershire', 'Gloucester, England'],
  ['Gwynedd', 'Caernarfon, Wales'],
  ['Hampshire', 'Winchester, England'],
  ['Herefordshire', 'Hereford, England'],
  ['Hertfordshire', 'Hertford, England'],
  ['Kent', 'Maidstone, England'],
  ['Lake District', 'Keswick, England'],
  ['Lancashire', 'Lancaster, England'],
  ['Leicestershire', 'Leicester, England'],
  ['Lincolnshire', 'Lincoln, England'],
  ['Norfolk', 'Norwich, England'],
  ['Northamptonshire', 'Northampton, England'],
  ['Northumberland', 'Morpeth, England'],
  ['Nottinghamshire', 'Nottingham, England'],
  ['Oxfordshire', 'Oxford, England'],
  ['Peak District', 'Buxton, England'],
  ['Pembrokeshire', 'Haverfordwest, Wales'],
  ['Powys', 'Brecon, Wales'],
  ['Shropshire', 'Shrewsbury, England'],
  ['Snowdonia', 'Caernarfon, Wales'],
  ['Somerset', 'Taunton, England'],
  ['Staffordshire', 'Stafford, England'],
  ['Suffolk', 'Ipswich, England'],
  ['Surrey', 'Guildford, England'],
  ['Sussex', 'Lewes, England'],
  ['Warwickshire', 'Warwick, England'],
  ['West Sussex', 'Chichester, England'],
  ['Wiltshire', 'Trowbridge, England'],
  ['Worcestershire', 'Worcester, England'],
  ['Yorkshire', 'York, England'],
];
const TOWN_OF = new Map(COUNTY_TOWNS.map(([county, town]) => [foldPlace(county), { county, town }]));

/** The county that is named, and its town; null where the name is none. */
export const countyNamed = (text: string): { readonly county: string; readonly town: string } | null =>
  TOWN_OF.get(foldPlace(text).replace(/^the /u, '')) ?? null;
