// Makes the Matrix encryption package fail to load at first, as it does where its library was never added.
import Module from 'node:module';

const load = Module._load;
let hasFailed = false;
Module._load = (request, ...rest) => {
  if (!hasFailed && request.startsWith('@matrix-org/matrix-sdk-crypto-nodejs')) {
    hasFailed = true;
    throw new Error('taken away for this test');
  }
  return load.call(Module, request, ...rest);
};
