/** Service days, runs and distance of every vehicle. */
import { serviceHead, tellCarried, tellService } from '../../../desk/leave/tell.ts';
import { carried, service, type Trip } from '../../../records/service.ts';
import { speech } from '../../state/session.ts';

export function ServiceTable({ all }: { readonly all: readonly Trip[] }) {
  const [first, ...rest] = serviceHead;
  return (
    <div class="scroll" tabIndex={0} role="region" aria-label="Service of vehicles">
      <table>
        <caption>Service of vehicles</caption>
        <thead>
          <tr>
            <th scope="col">{first}</th>
            {rest.map((head) => (
              <th scope="col" key={head}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {service(all).map((one) => {
            const [name, ...cells] = tellService(one, speech.value);
            return (
              <tr key={name}>
                <th scope="row">{name}</th>
                {cells.map((cell, i) => (
                  <td key={i}>{cell}</td>
                ))}
              </tr>
            );
          })}
        </tbody>
      </table>
      <p>{tellCarried(carried(all))}</p>
    </div>
  );
}
