/**
 * How children are called on this page: the label that tells two of one name apart, or initials under the shield, the
 * teacher's own where some were chosen.
 */
export function initials(children, chosen = {}) {
  const short = new Map(Object.entries(chosen));
  const taken = new Set(short.values());
  for (const { child, label, given_name: given } of children.filter((c) => !short.has(c.child))) {
    const words = (label || given).trim().split(/\s+/);
    const candidates = [
      words.map((word) => word[0]).join(''),
      [...words[0]].slice(0, 2).join(''),
      [...words[0]].slice(0, 3).join(''),
    ];
    let name = candidates.find((candidate) => !taken.has(candidate));
    for (let n = 2; !name; n += 1) {
      name = taken.has(candidates[0] + n) ? undefined : candidates[0] + n;
    }
    taken.add(name);
    short.set(child, name);
  }
  return short;
}

/** A function from a child's id to the name that may be shown now. */
export function naming(children, shielded, chosen = {}) {
  const short = initials(children, chosen);
  const long = new Map(children.map((c) => [c.child, c.label || c.given_name]));
  return (child) => (shielded ? short.get(child) : long.get(child)) ?? '?';
}
