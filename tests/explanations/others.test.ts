import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { OTHER_EXPLANATIONS } from '~/lib/explanations/others';
import { findQuantity } from '~/lib/readings/quantities';

const FINDINGS = new URL('../../lib/findings/', import.meta.url).pathname;
const sources = readdirSync(FINDINGS, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => readFileSync(join(FINDINGS, name), 'utf8'))
  .join('\n');

describe('explanations that are not weighed', () => {
  it.each(OTHER_EXPLANATIONS)('$id names findings that are made and quantities of the catalogue', (other) => {
    expect(other.findings.filter((what) => !sources.includes(`'${what}'`))).toEqual([]);
    expect([...other.observations, ...other.readings].filter((id) => findQuantity(id) === undefined)).toEqual(
      [],
    );
  });

  it('have a screen each where one is computed', () => {
    const screened = OTHER_EXPLANATIONS.filter(({ findings }) => findings.length > 0).map(({ id }) => id);
    expect(screened).toEqual(
      expect.arrayContaining(['overspeed', 'harmonicRoll', 'trackBuckle', 'inTrainForce']),
    );
  });
});
