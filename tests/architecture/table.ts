/**
 * Who may import whom, as data. A file belongs to the first area whose pattern fits; what a row does not name is forbidden,
 * and there is no list of exceptions.
 */

/** Areas of the repository, the narrow before the wide. */
export const areas = {
  tests: /^tests\/|\.test\.tsx?$/,
  seed: /^seed\//,
  scripts: /^scripts\/|^[^/]+\.config\.(ts|mjs)$/,
  proxy: /^proxy\.ts$/,
  client: /^generated\//,
  manifest: /^package\.json$/,
  style: /\.css$/,
  db: /^lib\/platform\/db\.ts$/,
  product: /^lib\/platform\/product\.ts$/,
  platform: /^lib\/platform\//,
  session: /^lib\/access\/session\.ts$/,
  action: /^lib\/access\/action\.ts$/,
  accessStore: /^lib\/access\/store\//,
  access: /^lib\/access\//,
  curriculumStore: /^lib\/curriculum\/store\//,
  curriculum: /^lib\/curriculum\//,
  assessmentStore: /^lib\/assessment\/store\//,
  wording: /^lib\/assessment\/(.+\/)?wording(\/|\.ts$|-)/,
  measure: /^lib\/assessment\/measure\//,
  assessment: /^lib\/assessment\//,
  reportsStore: /^lib\/reports\/store\//,
  reports: /^lib\/reports\//,
  ui: /^app\/_components\/ui\//,
  domain: /^app\/_components\/domain\//,
  server: /^app\/(.+\/)?(loader|actions)\.ts$|^app\/api\//,
  page: /^app\/(.+\/)?(page|layout|loading|error|not-found|global-error)\.tsx$/,
  deck: /^app\/deck\//,
  view: /^app\//,
} as const

export type Area = keyof typeof areas

/** Packages by what they are for. */
export const packages = {
  database: /^pg$|^@prisma\//,
  next: /^next(\/|$)/,
  nextAuth: /^next-auth(\/|$)/,
  react: /^react(-dom)?(\/|$)/,
  zod: /^zod$/,
  canonical: /^canonicalize$/,
  hash: /^node:crypto$/,
  ids: /^uuid$/,
  idb: /^idb$/,
  passwords: /^@node-rs\/argon2$/,
  limits: /^rate-limiter-flexible$/,
} as const

export type Package = keyof typeof packages

export interface Row {
  readonly all?: readonly Area[]
  /** Types only: the import disappears when compiled. */
  readonly types?: readonly Area[]
  /** 'any': tests, seed and scripts take what they need. */
  readonly packages: readonly Package[] | 'any'
}

const everyArea = Object.keys(areas) as Area[]
const rules = ['curriculum', 'assessment', 'measure', 'wording', 'reports'] as const
const storePackages = ['database', 'ids', 'hash', 'zod'] as const

export const table: Record<Area, Row> = {
  platform: { all: ['platform', 'product', 'db', 'manifest'], packages: ['zod'] },
  product: { packages: [] },
  db: { all: ['platform', 'client'], packages: ['database'] },

  access: { all: ['access'], packages: ['zod'] },
  session: {
    all: ['access', 'accessStore', 'platform', 'product'],
    packages: ['nextAuth', 'next', 'react'],
  },
  action: {
    all: ['access', 'session', 'accessStore', 'platform', 'product'],
    packages: ['next', 'react', 'zod'],
  },
  accessStore: {
    all: ['access', 'accessStore', 'db', 'client'],
    packages: [...storePackages, 'passwords', 'limits'],
  },

  curriculum: { all: ['curriculum'], packages: ['zod', 'canonical', 'hash'] },
  /** Geometry and ballistics on numbers: views compute with it, so it knows of nothing but what a curriculum may ask. */
  measure: { all: ['curriculum', 'measure'], packages: ['zod'] },
  assessment: { all: ['curriculum', 'assessment', 'measure', 'wording'], packages: ['zod', 'canonical', 'hash'] },
  wording: { all: ['curriculum', 'assessment', 'measure', 'wording'], packages: ['zod'] },
  reports: { all: ['curriculum', 'assessment', 'measure', 'wording', 'reports'], packages: ['zod'] },

  curriculumStore: {
    all: ['curriculum', 'curriculumStore', 'db', 'client'],
    types: ['access'],
    packages: storePackages,
  },
  assessmentStore: {
    all: ['curriculum', 'assessment', 'measure', 'wording', 'curriculumStore', 'assessmentStore', 'db', 'client'],
    types: ['access'],
    packages: storePackages,
  },
  reportsStore: {
    all: [...rules, 'curriculumStore', 'assessmentStore', 'reportsStore', 'db', 'client'],
    types: ['access'],
    packages: storePackages,
  },

  server: {
    all: [
      ...rules,
      ...(['access', 'session', 'action', 'platform', 'product'] as const),
      ...(['accessStore', 'curriculumStore', 'assessmentStore', 'reportsStore', 'server'] as const),
    ],
    types: ['view', 'domain', 'ui', 'deck'],
    packages: ['next', 'react', 'zod'],
  },
  page: {
    all: ['wording', 'product', 'server', 'page', 'view', 'deck', 'domain', 'ui', 'style'],
    types: ['curriculum', 'assessment', 'measure', 'reports'],
    packages: ['next', 'react'],
  },
  view: {
    all: ['wording', 'product', 'server', 'view', 'domain', 'ui', 'style'],
    types: ['curriculum', 'assessment', 'measure', 'reports'],
    packages: ['next', 'react'],
  },
  ui: { all: ['ui'], packages: ['react'] },
  domain: { all: ['measure', 'wording', 'domain', 'ui'], types: ['curriculum', 'assessment'], packages: ['react'] },
  deck: {
    all: ['curriculum', 'assessment', 'measure', 'wording', 'product', 'deck', 'domain', 'ui'],
    packages: ['react', 'idb', 'ids'],
  },

  proxy: { packages: ['next'] },
  client: { all: ['client'], packages: 'any' },
  manifest: { packages: [] },
  style: { packages: [] },
  seed: { all: everyArea, packages: 'any' },
  scripts: { all: everyArea, packages: 'any' },
  tests: { all: everyArea, packages: 'any' },
}
