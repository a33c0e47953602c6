import {
  createUniver,
  defaultTheme,
  IConfigService,
  LocaleType,
  type FUniver,
  type Injector,
  type IWorkbookData,
} from '@univerjs/presets';
import {
  CalculationMode,
  ENGINE_FORMULA_PLUGIN_CONFIG_KEY,
  UniverSheetsCorePreset,
} from '@univerjs/preset-sheets-core';
import enUS from '@univerjs/preset-sheets-core/locales/en-US';
import { UniverSheetsConditionalFormattingPreset } from '@univerjs/presets/preset-sheets-conditional-formatting';
import highlightsEnUS from '@univerjs/presets/preset-sheets-conditional-formatting/locales/en-US';
import { UniverSheetsDataValidationPreset } from '@univerjs/presets/preset-sheets-data-validation';
import listsEnUS from '@univerjs/presets/preset-sheets-data-validation/locales/en-US';
import '@univerjs/preset-sheets-core/lib/index.css';
import '@univerjs/presets/lib/styles/preset-sheets-conditional-formatting.css';
import '@univerjs/presets/lib/styles/preset-sheets-data-validation.css';

/** The grid on the page, stripped to formula bar, cells and sheet tabs. */
export interface GridHost {
  readonly api: FUniver;
  readonly injector: Injector;
  /** Takes the grid off the page. */
  close(): void;
}

/** Formulas answered between two pauses in which the page draws and listens. */
const FORMULAS_A_PAUSE = 25;

/** What the grid says while a long ledger answers, which its own words leave out. */
const progressEnUS = {
  'sheets-formula': {
    ...enUS['sheets-formula'],
    progress: {
      analyzing: 'Looking at the formulas',
      calculating: 'Working out the formulas',
      'array-analysis': 'Looking at the lists',
      'array-calculation': 'Working out the lists',
      done: 'All formulas answered',
    },
  },
};

/** Shows the snapshot in the element with that id. No formula is answered before someone asks. */
export function mountGrid(container: string, snapshot: IWorkbookData): GridHost {
  const dark = matchMedia('(prefers-color-scheme: dark)');
  const { univer, univerAPI } = createUniver({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: { ...enUS, ...progressEnUS, ...listsEnUS, ...highlightsEnUS } },
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
        formula: { initialFormulaComputing: CalculationMode.NO_CALCULATION },
        sheets: { disableForceStringAlert: true, disableForceStringMark: true },
        disableTextFormatAlert: true,
        disableTextFormatMark: true,
      }),
      // The search box of a list would take the keys from the cell that is being typed in.
      UniverSheetsDataValidationPreset({ showEditOnDropdown: false, showSearchOnDropdown: false }),
      UniverSheetsConditionalFormattingPreset(),
    ],
  });
  dark.addEventListener('change', ({ matches }) => {
    univerAPI.toggleDarkMode(matches);
  });
  const injector = univer.__getInjector();
  injector
    .get(IConfigService)
    .setConfig(
      ENGINE_FORMULA_PLUGIN_CONFIG_KEY,
      { intervalCount: FORMULAS_A_PAUSE },
      { merge: true },
    );
  univerAPI.createWorkbook(snapshot);
  return {
    api: univerAPI,
    injector,
    close: () => {
      univer.dispose();
    },
  };
}
