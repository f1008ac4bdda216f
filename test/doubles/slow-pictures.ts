/** A recogniser that takes as long as the test wants, and then reads one line of a system's log. */
import type { PictureReader } from '../../bot/pictures/picture-reader.js';

export const slowPictures = (): { readonly pictures: PictureReader; readonly isRead: () => void } => {
  let isRead = (): void => undefined;
  const reading = new Promise<void>((resolve) => (isRead = resolve));
  const pictures: PictureReader = {
    read: async () => {
      await reading;
      return { text: 'usb 1-1: device descriptor read/64, error -71', confidencePercent: 90 };
    },
    close: () => undefined,
  };
  return { pictures, isRead: () => isRead() };
};
