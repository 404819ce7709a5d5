import { useLocation } from '@remix-run/react';
import type { MechanicsView } from '~/app/rails/mechanics.server';
import { FigureImage } from '../FigureImage';
import { FindingList } from '../findings/FindingList';
import { Sheet } from '../Sheet';
import { SubTabs } from '../subjects/SubTabs';

/** What wheel, rail and track give together: one way off the rail at a time, with its drawings. */
export function Mechanics({ tabs, open, findings, figures }: MechanicsView) {
  const { search } = useLocation();
  const to = (way: string) => {
    const params = new URLSearchParams(search);
    params.set('way', way);
    return `?${params}#ways`;
  };
  return (
    <Sheet title="Wheel, rail and track together" id="ways">
      <SubTabs
        label="Ways off the rail"
        tabs={tabs.map((tab) => ({ ...tab, href: to(tab.id) }))}
        open={open}
      />
      <div className={figures.length > 0 ? 'beside beside--even' : undefined}>
        <FindingList findings={findings} empty="Nothing yet." />
        {figures.length > 0 && (
          <div className="stack">
            {figures.map((figure) => (
              <FigureImage key={figure.href} figure={figure} />
            ))}
          </div>
        )}
      </div>
    </Sheet>
  );
}
