import { NAMESPACE, spillingFunctions } from './add-in-functions.ts';
import { rewriteCode } from './formula-mask.ts';
import { futureFunctions, worksheetFutureFunctions } from './future-functions.ts';
import { prefixParameters } from './formula-parameters.ts';
import { Refusal } from '../refusal.ts';
import { withoutSinglePicks } from './single-picks.ts';

/** A stored formula (no "=") as a person types it: "=POUR.BOOK(Lots[[#Headers],[#Data]])", "=A1#", "=XLOOKUP(…)". */
export function typedFormula(stored: string): string {
  const typed = rewriteCode(
    stored,
    (code) =>
      code
        .replace(
          new RegExp(`_xldudf_${NAMESPACE}_([A-Za-z0-9_]+)`, 'gi'),
          (_match, name: string) => `${NAMESPACE}.${name.toUpperCase()}`,
        )
        .replace(/_xlfn\.ANCHORARRAY\(([^()]+)\)/gi, '$1#')
        .replace(/_xlfn\.SINGLE\(([^()]+)\)/gi, '@$1')
        .replace(/_xlfn\.(?:_xlws\.)?|_xlpm\./gi, ''),
    typedBracket,
  );
  return `=${typed}`;
}

/** A typed formula as the file stores it, without "=". Refuses the few forms a file cannot hold. */
export function storedFormula(typed: string): string {
  const formula = typed.startsWith('=') ? typed.slice(1) : typed;
  return rewriteCode(prefixParameters(formula), storeCode, storedBracket);
}

/** Whether Excel must be told that the formula may fill several cells, so that it adds no "@". */
export function mayFillCells(stored: string): boolean {
  let may = false;
  rewriteCode(stored, (whole) => {
    const code = withoutSinglePicks(whole);
    const ours = code.matchAll(new RegExp(`_xldudf_${NAMESPACE}_(\\w+)\\(`, 'gi'));
    may =
      FILLS.test(code) ||
      [...ours].some((call) => spillingFunctions.has(call[1]?.toUpperCase() ?? ''));
    return whole;
  });
  return may;
}

const FILLS =
  /_xlfn\.(_xlws\.\w+|ANCHORARRAY|LET|LAMBDA|UNIQUE|SORTBY|SEQUENCE|RANDARRAY|XLOOKUP|XMATCH|VSTACK|HSTACK|TOCOL|TOROW|WRAPROWS|WRAPCOLS|TAKE|DROP|EXPAND|CHOOSECOLS|CHOOSEROWS|BYROW|BYCOL|MAP|SCAN|MAKEARRAY|TEXTSPLIT)\(/i;

function storeCode(code: string): string {
  return code
    .replace(
      new RegExp(`(?<![\\w.])${NAMESPACE}\\.([A-Za-z0-9_]+)(?=\\()`, 'gi'),
      (_match, name: string) => `_xldudf_${NAMESPACE}_${name.toUpperCase()}`,
    )
    .replace(/(?<![\w.])([A-Za-z][A-Za-z0-9.]*)(?=\()/g, (name: string) => prefixed(name))
    .replace(
      /((?:(?:\uE000\d+\uE001|[\w.]+)!)?[$A-Za-z_][\w.$]*)#(?![A-Za-z])/g,
      '_xlfn.ANCHORARRAY($1)',
    )
    .replace(
      /@((?:(?:\uE000\d+\uE001|[\w.]+)!)?[$A-Za-z_][\w.$:]*(?:\uE000\d+\uE001)?)(\(?)/g,
      single,
    );
}

function prefixed(name: string): string {
  const upper = name.toUpperCase();
  if (worksheetFutureFunctions.has(upper)) return `_xlfn._xlws.${upper}`;
  return futureFunctions.has(upper) ? `_xlfn.${upper}` : name;
}

function single(_match: string, reference: string, call: string): string {
  if (call)
    throw new Refusal('A formula with "@" before a function cannot be saved; leave out the "@".');
  return `_xlfn.SINGLE(${reference})`;
}

/** `[[#This Row],[Amount]]` is what a file holds for `[@Amount]`. */
function typedBracket(text: string): string {
  const match = /^\[\[#This Row\],(\[.+\])\]$/is.exec(text);
  const columns = match?.[1];
  if (columns === undefined) return text;
  return /^\[\w+\]$/.test(columns) ? `[@${columns.slice(1, -1)}]` : `[@${columns}]`;
}

function storedBracket(text: string): string {
  const columns = /^\[@(.+)\]$/s.exec(text)?.[1];
  if (columns === undefined) return text;
  return `[[#This Row],${columns.startsWith('[') ? columns : `[${columns}]`}]`;
}
