/** A reader that has seen enough (`| head`) is no error: the program ends with it. */
export const leaveWithReader = (): void => {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 1));
};
