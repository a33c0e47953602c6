import { element } from './elements.ts';

/** Sheets and pane side by side where there is room, one of them alone on a small screen. */
export interface Views {
  /** The pane stands: shows what belongs on this screen, and brings the sheets where they are in sight. */
  begin(): void;
  /** Has the sheets in sight. */
  showSheets(): void;
}

/** A phone, held upright or on its side. */
const SMALL = '(max-width: 760px), (max-height: 480px)';

/** `bring` has the sheets come; it may be called again. */
export function createViews(bring: () => void): Views {
  const small = matchMedia(SMALL);
  const [sheet, pane, toggle] = [element('sheet'), element('pane'), element('pane-toggle')];
  let hasBegun = false;
  let isPaneHidden = false;
  let alone: 'pane' | 'sheets' = 'pane';
  const update = () => {
    const isSmall = small.matches;
    const wasThere = hasBegun && !sheet.hidden;
    hasBegun = true;
    sheet.hidden = isSmall && alone === 'pane';
    pane.hidden = isSmall ? alone === 'sheets' : isPaneHidden;
    toggle.textContent = pane.hidden
      ? 'Show the pane'
      : isSmall
        ? 'Show the sheets'
        : 'Hide the pane';
    toggle.setAttribute('aria-expanded', String(!pane.hidden));
    document.body.dataset['shows'] = sheet.hidden ? 'pane' : pane.hidden ? 'sheets' : 'both';
    if (!sheet.hidden && !wasThere) bring();
  };
  toggle.addEventListener('click', () => {
    if (small.matches) alone = alone === 'pane' ? 'sheets' : 'pane';
    else isPaneHidden = !isPaneHidden;
    update();
  });
  return {
    begin() {
      update();
      small.addEventListener('change', update);
    },
    showSheets() {
      alone = 'sheets';
      update();
    },
  };
}
