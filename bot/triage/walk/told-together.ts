/** What single words do not tell and several together do: ports, addresses, speeds, volts named, settings and groups listed. */
import type { Reading } from '../../reading/index.js';
import { withAddressesCompared } from './addresses-named.js';
import { withBluetoothPorts } from './bluetooth-ports-named.js';
import { withGapNamed } from './gap-named.js';
import { withGroupsListed } from './groups-named.js';
import { withGuestsNamed } from './guests-named.js';
import { withPortsCompared } from './ports-named.js';
import { withSettingsListed } from './settings-listed.js';
import { withSpeedsCompared } from './speeds-named.js';
import { withThingsLacked } from './things-lacked.js';
import { withVoltsCompared } from './volts-named.js';

/**
 * @param own what was read of the text alone
 * @param texts all of the walk, this one last
 */
export const withAllTold = (own: Reading, text: string, texts: readonly string[]): Reading => {
  const compared =
    own.by === 'words'
      ? withThingsLacked(
          withGapNamed(withVoltsCompared(withSettingsListed(withSpeedsCompared(own, texts), text), text), text),
          text,
        )
      : own;
  const listed = withGroupsListed(withGuestsNamed(compared, text), text);
  return withAddressesCompared(withBluetoothPorts(withPortsCompared(listed, texts), texts), texts);
};
