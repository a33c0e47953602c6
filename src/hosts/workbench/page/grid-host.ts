import {
  createUniver,
  defaultTheme,
  LocaleType,
  type FUniver,
  type Injector,
} from '@univerjs/presets';
import { CalculationMode, UniverSheetsCorePreset } from '@univerjs/preset-sheets-core';
import enUS from '@univerjs/preset-sheets-core/locales/en-US';
import { UniverSheetsConditionalFormattingPreset } from '@univerjs/presets/preset-sheets-conditional-formatting';
import highlightsEnUS from '@univerjs/presets/preset-sheets-conditional-formatting/locales/en-US';
import { UniverSheetsDataValidationPreset } from '@univerjs/presets/preset-sheets-data-validation';
import listsEnUS from '@univerjs/presets/preset-sheets-data-validation/locales/en-US';
import '@univerjs/preset-sheets-core/lib/index.css';
import '@univerjs/presets/lib/styles/preset-sheets-conditional-formatting.css';
import '@univerjs/presets/lib/styles/preset-sheets-data-validation.css';
import type { WorkbookImage } from '../../xlsx/image.ts';
import { snapshotOf } from './snapshot.ts';

/** The grid on the page, stripped to formula bar, cells and sheet tabs. */
export interface GridHost {
  readonly api: FUniver;
  readonly injector: Injector;
}

/** Shows the image in the element with that id. No formula is answered before functions are there. */
export function mountGrid(container: string, image: WorkbookImage): GridHost {
  const dark = matchMedia('(prefers-color-scheme: dark)');
  const { univer, univerAPI } = createUniver({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: { ...enUS, ...listsEnUS, ...highlightsEnUS } },
    theme: defaultTheme,
    darkMode: dark.matches,
    presets: [
      UniverSheetsCorePreset({
        container,
        header: true,
        toolbar: false,
        contextMenu: false,
        footer: {
          sheetBar: true,
          statisticBar: true,
          menus: false,
          zoomSlider: false,
          addSheetButtonConfig: { show: false },
        },
        formula: { initialFormulaComputing: CalculationMode.FORCED },
        sheets: { disableForceStringAlert: true, disableForceStringMark: true },
        disableTextFormatAlert: true,
        disableTextFormatMark: true,
      }),
      UniverSheetsDataValidationPreset({ showEditOnDropdown: false }),
      UniverSheetsConditionalFormattingPreset(),
    ],
  });
  dark.addEventListener('change', ({ matches }) => {
    univerAPI.toggleDarkMode(matches);
  });
  univerAPI.createWorkbook(snapshotOf(image));
  return { api: univerAPI, injector: univer.__getInjector() };
}
