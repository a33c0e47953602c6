import { records } from '../../../functions/records/index.ts';
import { spills } from '../../../functions/records/record.ts';

export { NAMESPACE } from '../../../functions/records/index.ts';

/**
 * The add-in's functions whose result may fill several cells (contract §5). The file marks
 * them as dynamic arrays even while they hold one value. The others are stored as ordinary
 * formulas: LibreOffice then keeps showing their last result, which it never does for arrays.
 */
export const spillingFunctions: ReadonlySet<string> = new Set(
  Object.entries(records).flatMap(([id, record]) => (spills(record) ? [id] : [])),
);
