import type { HostPort } from '../../src/workbook/port.ts';
import { lookTask } from '../task/look-task.ts';
import type { Session } from '../task/session.ts';
import { type Task, taskOf } from '../task/task.ts';
import { checkLook } from './check/check-look.ts';
import { checkTask } from './check/check-task.ts';
import { mergeLook } from './merge/merge-look.ts';
import { mergeTask } from './merge/merge-task.ts';
import { partnerLook } from './partner/partner-look.ts';
import { taskGroup } from './task-group.ts';

/** Taking care of the book: is it sound, what does another copy hold, a copy for a partner. */
export function careTask(port: HostPort, session: Session, onChange: () => void): Task {
  return taskGroup(
    { name: 'care', label: 'Care', title: 'Take care of the book' },
    [
      taskOf(checkTask, checkLook(brokenNamesOf(port, session, onChange)), port, session, onChange),
      taskOf(mergeTask, mergeLook(port.files), port, session, onChange),
      lookTask(partnerLook(port.files, session), port, session, onChange),
    ],
    onChange,
  );
}

/** Names that lead nowhere: asked of the host once for each reading that is looked at. */
function brokenNamesOf(
  port: HostPort,
  session: Session,
  onChange: () => void,
): () => readonly string[] {
  let asked: Session['state'] | undefined;
  let names: readonly string[] = [];
  return () => {
    if (asked !== session.state) {
      asked = session.state;
      port.brokenNames().then(
        (found) => {
          names = found;
          onChange();
        },
        // A host that can't tell leaves the check of the ledger as it is.
        () => undefined,
      );
    }
    return names;
  };
}
