// Which of the files that were given along is the picture that a drawing links to.

/** The last step of an address, as a name of a file. */
function nameOf(address: string): string {
  const path = address.split(/[?#]/)[0]!;
  try {
    return decodeURIComponent(path).split('/').at(-1)!;
  } catch {
    // A percent sign of its own: the name is written as it is.
    return path.split('/').at(-1)!;
  }
}

/**
 * Finds files for the addresses of one job by their names: a page is told no folders. Where two addresses of different folders end in the
 * same name, nobody knows whose the file is, and the second gets none.
 */
export function findBesideIn<T extends { readonly name: string }>(
  beside: readonly T[],
): (address: string) => T | undefined {
  const owners = new Map<string, string>();
  return (address) => {
    const name = nameOf(address);
    const owner = address.replace(/^(?:\.\/)+/, '');
    if ((owners.get(name) ?? owner) !== owner) return undefined;
    owners.set(name, owner);
    return beside.find((file) => file.name === name);
  };
}
