import { canonicalJson, sha256Hex, type Json } from './canonical';

/** What one entry of a case's log says, without its hash. */
export type ChainLink = {
  /** '' for the first entry of a case. */
  readonly prevHash: string;
  /** 1 for the first entry, then one more each time. */
  readonly seq: number;
  readonly at: string;
  readonly actor: { readonly personId: string | null; readonly name: string };
  readonly action: string;
  readonly subject: { readonly kind: string; readonly id: string | null };
  readonly before: Json;
  readonly after: Json;
};

/** SHA-256 over the canonical form of the entry, the previous entry's hash included. */
export const linkHash = (link: ChainLink): string =>
  sha256Hex(
    canonicalJson({
      prevHash: link.prevHash,
      seq: link.seq,
      at: link.at,
      actor: { personId: link.actor.personId, name: link.actor.name },
      action: link.action,
      subject: { kind: link.subject.kind, id: link.subject.id },
      before: link.before,
      after: link.after,
    }),
  );

/** Every break in a chain given oldest first, in words. Empty: the chain is whole. */
export function chainProblems(
  entries: readonly (ChainLink & { readonly hash: string })[],
): readonly string[] {
  const problems: string[] = [];
  let prevHash = '';
  entries.forEach((entry, index) => {
    if (entry.seq !== index + 1) problems.push(`Entry ${index + 1} is numbered ${entry.seq}.`);
    if (entry.prevHash !== prevHash)
      problems.push(
        `Entry ${entry.seq} does not follow the entry before it: an entry was changed or removed.`,
      );
    if (linkHash(entry) !== entry.hash)
      problems.push(`Entry ${entry.seq} does not match its own hash: it was changed.`);
    prevHash = entry.hash;
  });
  return problems;
}
