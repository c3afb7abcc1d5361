// Why a file could not be written, in words.

const REASONS: Readonly<Record<string, string>> = {
  EACCES: 'writing there is not allowed',
  EPERM: 'writing there is not allowed',
  EROFS: 'nothing can be written on that disk',
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk is full for this user',
  EEXIST: 'a file stands on the way where a folder is needed',
  ENOTDIR: 'a file stands on the way where a folder is needed',
  ENAMETOOLONG: 'a name in it is too long',
};

/** Why a file could not be written, in words. */
export function explainWriting(error: unknown): string {
  const known = REASONS[(error as NodeJS.ErrnoException).code ?? ''];
  return known ?? (error instanceof Error ? error.message : String(error));
}
