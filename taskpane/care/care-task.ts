import type { HostPort } from '../../src/workbook/port.ts';
import type { Session } from '../task/session.ts';
import { type Task, taskOf } from '../task/task.ts';
import { checkLook } from './check/check-look.ts';
import { checkTask } from './check/check-task.ts';
import { taskGroup } from './task-group.ts';

/** Taking care of the book: is it sound, what does another copy hold, a copy for a partner. */
export function careTask(port: HostPort, session: Session, onChange: () => void): Task {
  return taskGroup(
    { name: 'care', label: 'Care', title: 'Take care of the book' },
    [taskOf(checkTask, checkLook, port, session, onChange)],
    onChange,
  );
}
