import type { HostPort } from '../src/workbook/port.ts';
import { careTask } from './care/care-task.ts';
import { costsLook } from './costs/costs-look.ts';
import { countLook } from './count/count-look.ts';
import { countTask } from './count/count-task.ts';
import { nowLook } from './now/now-look.ts';
import { pourLook } from './pour/pour-look.ts';
import { pourTask } from './pour/pour-task.ts';
import { receiveLook } from './receive/receive-look.ts';
import { receiveTask } from './receive/receive-task.ts';
import { reorderLook } from './reorder/reorder-look.ts';
import { sellLook } from './sell/sell-look.ts';
import { sellTask } from './sell/sell-task.ts';
import { lookTask } from './task/look-task.ts';
import type { Session } from './task/session.ts';
import { type Task, taskOf } from './task/task.ts';

/** All that can be done in the pane, in the order of its tabs. */
export function makeTasks(port: HostPort, session: Session, onChange: () => void): readonly Task[] {
  return [
    taskOf(pourTask, pourLook, port, session, onChange),
    taskOf(sellTask, sellLook, port, session, onChange),
    taskOf(receiveTask, receiveLook, port, session, onChange),
    taskOf(countTask, countLook, port, session, onChange),
    lookTask(costsLook, port, session, onChange),
    lookTask(reorderLook, port, session, onChange),
    lookTask(nowLook, port, session, onChange),
    careTask(port, session, onChange),
  ];
}
