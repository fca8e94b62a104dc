/** The words of the house, each once: `docs/glossary.md` is this table, and the search knows it. */

export interface Word {
  readonly word: string;
  readonly meaning: string;
  /** What it is called elsewhere; empty: the same. */
  readonly elsewhere: string;
}

const w = (word: string, meaning: string, elsewhere = ''): Word => ({ word, meaning, elsewhere });

export const glossary: readonly Word[] = [
  w('outing', "one train, one line, these riders, today's conditions, the host's rules"),
  w('line, chainage', 'the track, and the distance along it from its origin, growing "forward"'),
  w('grade', 'rise over run, uphill positive', 'gradient'),
  w('cant', 'height of one rail above the other'),
  w('place', 'station, signal, switch, crossing, tunnel, summit, board …', 'points for switch'),
  w('sight', 'clear track that a driver sees ahead'),
  w('propelled', 'with cars ahead of the driver: pushed, or driven from the wrong end'),
  w('lookout', 'a guard on the leading vehicle who watches the track, with a brake'),
  w('truck', 'axles in a frame that carries one end of a vehicle', 'bogie'),
  w('tare', 'mass of a vehicle in working order, without people'),
  w('drawbar pull, tractive effort', 'force at the coupler, at the rail'),
  w('adhesion', 'greatest force between wheel and rail ÷ load'),
  w('rolling resistance', 'force per weight that a vehicle needs to keep moving on the level'),
  w('brake ratio', 'retarding force ÷ weight'),
  w('likely, cautious', 'the middle figure; what one stop in a hundred may pass, given what was stated'),
  w('reaction, dead time, build-up', 'until the driver acts; until the brake begins; until it is full'),
  w('gap', 'clear distance to the train ahead'),
  w('host', 'whose line it is'),
  w('guard', 'the person in charge at the rear', 'conductor (US)'),
  w('parting', 'the train coming apart'),
  w('overturn, derailment', 'a car tips; a wheel leaves the rail'),
  w('strip', 'the picture of the line'),
  w('running card', 'paper for the driver: one side, a second where needed ([card](card.md))'),
  w('trial', 'changes tried on top of an outing; marked wherever it is shown'),
  w('finding, remedy', 'what Heedway has to say; the smallest change that clears it'),
  w('sum', 'one formula with its inputs'),
];
