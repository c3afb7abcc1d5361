// The first bytes of the pictures that a sheet may carry.

/** Media types of these pictures. */
export type PictureType = 'image/png' | 'image/jpeg' | 'image/gif' | 'image/webp';

/** Bytes as characters; sixteen are enough for all. */
export const PICTURE_STARTS: Readonly<Record<PictureType, RegExp>> = {
  'image/png': /^\x89PNG\r\n\x1a\n/,
  'image/jpeg': /^\xff\xd8\xff/,
  'image/gif': /^GIF8[79]a/,
  'image/webp': /^RIFF[\s\S]{4}WEBP/,
};
