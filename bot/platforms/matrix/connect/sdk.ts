/** The one place that imports the Matrix SDK, after its native part has been loaded or stood in for (imports run in order). */
import './native-crypto.js';

export { LogService, MatrixClient, MatrixError, RustSdkCryptoStorageProvider } from 'matrix-bot-sdk';
