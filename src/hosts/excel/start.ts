import '../../../taskpane/index.ts';
import type { TextStore } from '../in-browser.ts';
import type { Run } from './apply-change.ts';
import { excelPort } from './excel-port.ts';
import { healBook } from './heal-book.ts';
import { sentenceOfFault } from './host-fault.ts';
import { passingStore } from './passing-store.ts';
import { patientRun } from './patient-run.ts';
import { whatIsMissing } from './requirements.ts';
import { type Theme, themeOf } from './theme.ts';

const run: Run = patientRun(
  (batch) => Excel.run(batch),
  (ms) => new Promise((done) => setTimeout(done, ms)),
);

const runLater: Run = (batch) => Excel.run({ delayForCellEdit: true }, batch);

/** Starts the pane inside Excel, which also keeps the worksheet functions running. */
async function start(): Promise<void> {
  const { host } = await Office.onReady();
  if (host !== Office.HostType.Excel) {
    insteadOfPane('This pane works inside Excel. Without Excel, use the workbench (npm start).');
    return;
  }
  const { requirements } = Office.context;
  const missing = whatIsMissing((set, version) => requirements.isSetSupported(set, version));
  if (missing !== undefined) {
    insteadOfPane(missing);
    return;
  }
  const pane = document.querySelector('pour-pane');
  if (pane === null) throw new Error('taskpane.html has no <pour-pane>.');
  pane.theme = hostTheme();
  document.documentElement.style.colorScheme = pane.theme;
  pane.port = excelPort({
    run,
    runLater,
    workbookKey: `${Office.context.partitionKey ?? ''}|${Office.context.document.url ?? ''}`,
    store: storeHere(),
    isReadOnly: () => Office.context.document.mode === Office.DocumentMode.ReadOnly,
    now: () => new Date(),
    onDeaf: (sentence) =>
      notice(
        `${sentence} Until then the pane does not notice changes made in the sheet: reload it.`,
      ),
  });
  await wakeWorkbook();
}

/** Brings the book handles back, and has Excel start the add-in together with this workbook. */
async function wakeWorkbook(): Promise<void> {
  try {
    const isOurs = await healBook(runLater);
    if (!isOurs) return;
    const before = await Office.addin.getStartupBehavior();
    if (before !== Office.StartupBehavior.load) {
      await Office.addin.setStartupBehavior(Office.StartupBehavior.load);
    }
  } catch (problem) {
    notice(
      `${sentenceOfFault(problem)} If cells show #N/A, press Enter in the cell named Book once.`,
    );
  }
}

function hostTheme(): Theme {
  const prefersDark = matchMedia('(prefers-color-scheme: dark)').matches;
  return themeOf(Office.context.officeTheme, prefersDark);
}

function storeHere(): TextStore {
  try {
    return localStorage;
  } catch {
    // Some browsers forbid storage to pages inside pages; the pane then forgets when it closes.
    return passingStore();
  }
}

function insteadOfPane(sentence: string): void {
  document.querySelector('pour-pane')?.remove();
  notice(sentence);
}

const noticed = new Set<string>();

/** Shows a sentence above the pane, beside those that stand there. */
function notice(sentence: string): void {
  noticed.add(sentence);
  const place = document.getElementById('notice');
  if (place !== null) place.textContent = [...noticed].join(' ');
}

start().catch((problem: unknown) => notice(sentenceOfFault(problem)));
