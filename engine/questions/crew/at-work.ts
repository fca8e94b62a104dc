/** Who works this train: drivers and guards aboard, lookouts wherever they stand; each with what is said of the day. */
import type { Outing } from '../../outing/types.ts';
import type { CrewMember, Duty, Hours } from '../../things/duty.ts';
import type { Rider } from '../../things/train/types.ts';

export interface AtWork {
  readonly id: string;
  readonly name: string;
  readonly duty: Duty;
  readonly age?: number;
  /** Aboard, as rider, driver or guard. */
  readonly rider?: Rider;
  /** Absent: nobody has said anything of him or her. */
  readonly said?: CrewMember;
}

/** On which vehicle: whoever takes over has the same place. */
export const whereOf = ({ rider }: AtWork): { readonly vehicle?: string } =>
  rider?.vehicle === undefined ? {} : { vehicle: rider.vehicle };

/** The field of the outing's crew in which it is to be said. */
export const measureOf = ({ id }: AtWork, field: 'age' | 'sober' | 'fit' | `hours.${keyof Hours}`): string =>
  `outing.crew.${id}.${field}`;

export function atWork({ riders, crew = [] }: Pick<Outing, 'riders' | 'crew'>): readonly AtWork[] {
  const aboard = riders.flatMap((rider): AtWork[] =>
    rider.duty === 'rider' ? [] : [worker(rider.duty, rider, saidOf(crew, rider.id))],
  );
  const looking = crew
    .filter(({ looksOutAt }) => looksOutAt !== undefined)
    .map((said) =>
      worker(
        'lookout',
        riders.find(({ id }) => id === said.id),
        said,
      ),
    );
  return [...aboard, ...looking];
}

const saidOf = (crew: readonly CrewMember[], of: string): CrewMember | undefined =>
  crew.find(({ id }) => id === of);

function worker(duty: Duty, rider: Rider | undefined, said: CrewMember | undefined): AtWork {
  const { id, name } = (rider ?? said) as Rider | CrewMember;
  const age = rider?.age ?? said?.age;
  return {
    id,
    name,
    duty,
    ...(age === undefined ? {} : { age }),
    ...(rider ? { rider } : {}),
    ...(said ? { said } : {}),
  };
}
