/** The add-in's namespace: the only functions stored with the add-in prefix on save. */
export const NAMESPACE = 'POUR';

/**
 * The add-in's functions whose result may fill several cells (contract, section 5). The file marks
 * them as dynamic arrays even while they hold one value. The others are stored as ordinary
 * formulas: LibreOffice then keeps showing their last result, which it never does for arrays.
 */
export const spillingFunctions: ReadonlySet<string> = new Set([
  'TILECOUNT',
  'MELTSHEET',
  'WEIGHOUT',
  'MATERIALS',
  'TAKEOUT',
  'STOCKLIST',
  'SERVICECHECK',
  'COSTLINES',
  'FORECAST',
  'FORECASTFIT',
  'SUPPLIES',
  'CASHBYWEEK',
  'PLANNOTES',
  'CALENDAR',
  'FAIR',
  'BATCHCOST',
  'CHECKS',
  'TRACE',
  'RECALL',
]);
