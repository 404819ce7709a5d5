import { createNodeResolver, importX } from 'eslint-plugin-import-x';
import jsxA11y from 'eslint-plugin-jsx-a11y';
import reactHooks from 'eslint-plugin-react-hooks';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import tseslint from 'typescript-eslint';

const root = dirname(fileURLToPath(import.meta.url));

/** Rooms of lib, each with the rooms it may read besides itself. Imports run one way. */
const BOTTOM = ['case', 'readings'];
const MEASURED = ['outline', 'shapes', 'wheel', 'rail', 'track', 'turnout', 'train'];
const MAY_READ = {
  // What a case can be held against, and which classes an owner can designate, are the rule sets' own list.
  case: ['readings', 'rules'],
  readings: ['case'],
  custody: BOTTOM,
  rules: [...BOTTOM, 'findings'],
  outline: BOTTOM,
  tracing: [...BOTTOM, 'outline'],
  wheel: [...BOTTOM, 'outline'],
  rail: [...BOTTOM, 'outline'],
  shapes: [...BOTTOM, 'outline', 'wheel', 'rail'],
  track: BOTTOM,
  turnout: [...BOTTOM, 'outline', 'wheel', 'rail'],
  train: [...BOTTOM, 'track'],
  contact: [...BOTTOM, ...MEASURED],
  mechanics: [...BOTTOM, ...MEASURED, 'contact'],
  findings: [...BOTTOM, ...MEASURED, 'contact', 'mechanics', 'rules'],
  explanations: [...BOTTOM, ...MEASURED, 'contact', 'mechanics', 'rules', 'findings'],
};
const LIB_ROOMS = [...Object.keys(MAY_READ), 'figures', 'report'];

const zones = [
  {
    target: './lib',
    from: ['./app', './db', './fixtures', './tests'],
    message: 'lib reads nothing outside lib.',
  },
  { target: './db', from: ['./app', './fixtures', './tests'], message: 'db reads lib and nothing else.' },
  { target: './app', from: ['./tests'], message: 'app does not read tests.' },
  ...Object.entries(MAY_READ).flatMap(([room, allowed]) => {
    const message = `lib/${room} reads ${allowed.join(', ')} only.`;
    const closed = LIB_ROOMS.filter((other) => other !== room && !allowed.includes(other));
    return closed.map((other) => ({
      target: `./lib/${room}`,
      from: `./lib/${other}`,
      // The shapes of a source, a method and a finding are a contract that every formula states itself in.
      except: other === 'findings' ? ['./finding.ts'] : [],
      message,
    }));
  }),
];

export default tseslint.config(
  { ignores: ['build', 'data', 'node_modules', 'coverage', '.cache'] },
  ...tseslint.configs.strict,
  {
    files: ['**/*.{ts,tsx}'],
    plugins: { 'import-x': importX, 'react-hooks': reactHooks },
    settings: {
      'import-x/extensions': ['.ts', '.tsx', '.js', '.mjs'],
      'import-x/resolver-next': [
        createNodeResolver({
          extensions: ['.ts', '.tsx', '.js', '.mjs', '.json'],
          tsconfig: { configFile: `${root}/tsconfig.json` },
        }),
      ],
    },
    rules: {
      ...reactHooks.configs.recommended.rules,
      'import-x/no-restricted-paths': ['error', { basePath: root, zones }],
      'import-x/no-default-export': 'error',
      '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      eqeqeq: ['error', 'always', { null: 'ignore' }],
      'no-console': 'error',
    },
  },
  { files: ['**/*.tsx'], ...jsxA11y.flatConfigs.recommended },
  {
    files: ['**/*.tsx'],
    rules: {
      // A box that scrolls must be reachable with the keyboard; such a box is a named region.
      'jsx-a11y/no-noninteractive-tabindex': ['error', { roles: ['tabpanel', 'region'] }],
    },
  },
  {
    // Sums over arrays run between bounds the compiler cannot follow; a test that finds nothing where it
    // expects something fails by itself.
    files: ['lib/**', 'tests/**', 'fixtures/**'],
    rules: { '@typescript-eslint/no-non-null-assertion': 'off' },
  },
  {
    // Remix and the tools find these by their default export.
    files: [
      'app/root.tsx',
      'app/entry.*.tsx',
      'app/routes.ts',
      'app/routes/**',
      '*.config.ts',
      '**/*.config.ts',
    ],
    rules: { 'import-x/no-default-export': 'off' },
  },
  {
    // Programs that talk to the person who started them.
    files: ['app/server/**', 'app/entry.server.tsx', 'tests/**', 'fixtures/**'],
    rules: { 'no-console': 'off' },
  },
);
