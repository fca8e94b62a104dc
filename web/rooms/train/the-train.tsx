/** The make-up of the train: its order, the vehicle in hand with its figures, equipment from the shed. */
import { fileForm } from '../../../papers/fields.ts';
import { ChangedBar } from '../../parts/changed-bar.tsx';
import { Counts } from '../../parts/counts.tsx';
import { CountsBar } from '../../parts/counts-bar.tsx';
import { Group } from '../../parts/form/group.tsx';
import { paper, told } from '../../state/session.ts';
import { ShedRow } from './shed-row.tsx';
import { VehicleFields } from './vehicle-fields.tsx';
import { Yard } from './yard.tsx';

/** @param rests while the papers cannot be read: fields can be mended, nothing is moved */
export function TheTrain({ rests }: { readonly rests: boolean }) {
  return (
    <>
      <CountsBar />
      <div inert={rests}>
        <Yard />
      </div>
      <VehicleFields />
      <div inert={rests}>
        <ShedRow />
      </div>
      <details class="fold">
        <summary>The train as a whole: its name, pipe and chains</summary>
        <section class="paper inside">
          <Group
            json={paper.value['train']}
            form={fileForm('train')}
            path={['train']}
            without={['vehicles']}
          />
        </section>
      </details>
      <Counts told={told.value} />
      <ChangedBar />
    </>
  );
}
