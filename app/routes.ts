import { index, layout, route, type RouteConfig, type RouteConfigEntry } from '@remix-run/route-config';
import { existsSync } from 'node:fs';

/** Screens that are not in this tree yet are left out, so that the others can be built. */
const present = (entries: RouteConfigEntry[]): RouteConfigEntry[] =>
  entries
    .filter(({ file }) => existsSync(`app/${file}`))
    .map((entry) => (entry.children ? { ...entry, children: present(entry.children) } : entry));

export default present([
  index('routes/cases/list.tsx'),
  route('cases/new', 'routes/cases/new.tsx'),
  route('cases/:caseId', 'routes/case/layout.tsx', [
    layout('routes/case/part.tsx', [
      index('routes/case/index.ts'),
      route('overview', 'routes/case/overview.tsx'),
      route('scene', 'routes/case/scene.tsx'),
      route('train', 'routes/case/train.tsx'),
      route('marks', 'routes/case/marks.tsx'),
      route('track', 'routes/case/track.tsx'),
      route('wheels', 'routes/case/wheels.tsx'),
      route('rails', 'routes/case/rails.tsx'),
      route('turnout', 'routes/case/turnout.tsx'),
      route('photos', 'routes/case/photos.tsx'),
      route('explanations', 'routes/case/explanations.tsx'),
      route('explanations/judgements', 'routes/case/judgements.tsx'),
      route('report', 'routes/case/report.tsx'),
      route('log', 'routes/case/log.tsx'),
      route('records/:kind/new', 'routes/case/records/new.tsx'),
      route('records/:kind/:id', 'routes/case/records/edit.tsx'),
      route('readings/:readingId', 'routes/case/reading.tsx'),
      route('import/:importKind', 'routes/case/import.tsx'),
    ]),
  ]),
  route('cases/:caseId/entering-as', 'routes/case/entering-as.ts'),
  route('cases/:caseId/report.pdf', 'routes/case/report-pdf.ts'),
  route('cases/:caseId/photos/:photoId/file', 'routes/case/photo-file.ts'),
  route('cases/:caseId/photos/:photoId/thumb', 'routes/case/photo-thumb.ts'),
  route('look', 'routes/look.ts'),
  route('safety', 'routes/safety.tsx'),
  route('methods', 'routes/methods.tsx'),
  route('*', 'routes/not-found.tsx'),
]) satisfies RouteConfig;
