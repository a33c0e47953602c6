import '../../../taskpane/index.ts';
import type { TextStore } from '../in-browser.ts';
import type { Run } from './apply-change.ts';
import { BookKeeper } from './book-keeper.ts';
import { excelPort } from './excel-port.ts';
import { nearTheLimit } from './hand-over.ts';
import { sentenceOfFault } from './host-fault.ts';
import { hearOfMissingBooks } from './missing-books.ts';
import { passingStore } from './passing-store.ts';
import { patientRun, type Wait } from './patient-run.ts';
import { whatIsMissing } from './requirements.ts';
import { type OfficeTheme, themeOf } from './theme.ts';

const wait: Wait = (ms) => new Promise((done) => setTimeout(done, ms));

const run: Run = patientRun((batch) => Excel.run(batch), wait);

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
  const isOnWeb = Office.context.platform === Office.PlatformType.OfficeOnline;
  pane.port = excelPort({
    run,
    runLater,
    workbookKey: `${Office.context.partitionKey ?? ''}|${Office.context.document.url ?? ''}`,
    store: storeHere(),
    isReadOnly: () => Office.context.document.mode === Office.DocumentMode.ReadOnly,
    now: () => new Date(),
    onRead: (tables) => {
      if (isOnWeb) notice('size', nearTheLimit(tables));
    },
    onDeaf: (sentence) =>
      notice(
        'changes',
        `${sentence} Until then the pane does not notice changes made in the sheet: reload it.`,
      ),
  });
  const keeper = new BookKeeper({
    runLater,
    wait,
    say: (sentence) => notice('book', sentence),
  });
  hearOfMissingBooks(() => void keeper.heal());
  pane.port.onChange(() => void keeper.look());
  await wakeWorkbook(keeper);
}

/** Brings the book handles back, and has Excel start the add-in together with this workbook. */
async function wakeWorkbook(keeper: BookKeeper): Promise<void> {
  const isOurs = await keeper.heal();
  if (!isOurs) return;
  const before = await Office.addin.getStartupBehavior();
  if (before !== Office.StartupBehavior.load) {
    await Office.addin.setStartupBehavior(Office.StartupBehavior.load);
  }
}

function hostTheme(): OfficeTheme {
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
  notice('start', sentence);
}

type Subject = 'start' | 'changes' | 'size' | 'book';

const noticed = new Map<Subject, string>();

/** Shows a sentence above the pane in place of the last of its subject, beside those of others; undefined ends it. */
function notice(subject: Subject, sentence: string | undefined): void {
  if (sentence === undefined) noticed.delete(subject);
  else noticed.set(subject, sentence);
  const place = document.getElementById('notice');
  if (place !== null) place.textContent = [...noticed.values()].join(' ');
}

start().catch((problem: unknown) => notice('start', sentenceOfFault(problem)));
