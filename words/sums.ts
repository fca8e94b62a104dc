/** What each sum is called and what it answers. */

export interface SumWords {
  readonly title: string;
  /** One line: the question that it answers. */
  readonly asks: string;
  /** What must be watched; empty where nothing beyond the range. */
  readonly caution: string;
  /** Arguments of a worked example, as people write them. */
  readonly example: string;
}

const w = (title: string, asks: string, example: string, caution = ''): SumWords => ({
  title,
  asks,
  example,
  caution,
});

export const sumWords: Readonly<Record<string, SumWords>> = {
  'stopping-distance': w(
    'Stopping distance',
    'How far to stop from a speed on a constant grade?',
    'speed=7mph deceleration=0.8m/s² reaction=1.25s dead-time=0.5s build-up=1.5s grade=-2.6%',
    'One grade throughout, adhesion not looked at: the outing check does both.',
  ),
  'mean-deceleration': w(
    'Mean deceleration of a stop',
    'How hard did it brake, from speed and distance?',
    'speed=20km/h distance=20m',
    'Includes reaction and build-up if the distance does.',
  ),
  'sight-stopping-distance': w('Stopping sight distance', 'How much clear way must be seen?', 'speed=35mph'),
  'brake-ratio': w(
    'Brake ratio',
    'What share of the weight do the brakes hold back?',
    'force=150lbf mass=1050lb',
  ),
  'coasting-distance': w(
    'Coasting distance',
    'How far does it roll by itself?',
    'speed=5mph resistance=6N/kN',
  ),
  'coast-down-resistance': w(
    'Resistance from a coast-down',
    'What is the rolling resistance, from timing a coast?',
    'from=5mph to=3mph time=12s',
  ),
  'runaway-speed': w(
    'Runaway speed',
    'How fast after rolling away down a grade?',
    'distance=300ft fall=2.6% resistance=4N/kN',
    'Take the lowest resistance: cars run away better than one thinks.',
  ),
  'rotating-energy': w(
    'Energy of rotating wheels',
    'What do the turning wheels add?',
    'mass=700lb gyration=13in wheel-radius=18in speed=20mph',
  ),
  'in-train-force': w(
    'Force at a gap in the train',
    'What does the coupler carry?',
    'mass-behind=600kg acceleration=0.2m/s²',
    'Steady force only; slack adds a snatch.',
  ),
  'signal-headway': w(
    'Signal headway',
    'How close may trains follow through a block?',
    'speed=5mph sighting=60ft braking=80ft block=300ft train-length=40ft release=5s',
  ),
  'flag-distance': w(
    'Flag behind a standing train',
    'How far back must the flag stand?',
    'stop=120ft sight=40ft margin=20ft',
  ),
  'gap-time': w('Gap in seconds', 'How many seconds is a gap?', 'gap=120ft speed=6mph'),
  'grade-force': w('Pull of a grade', 'How hard does a grade pull?', 'mass=2000lb grade=1%'),
  'curve-resistance': w('Curve resistance', 'How hard does a curve hold back?', 'mass=1400kg radius=45ft'),
  'curve-resistance-by-degree': w(
    'Curve resistance by degree',
    'How hard does a curve hold back, full-size rule?',
    'mass=2000lb degree=10°',
    'For standard gauge.',
  ),
  'davis-resistance': w(
    'Davis resistance',
    'What is the resistance of full-size cars at speed?',
    'mass=286000lb speed=50mph',
    'For full-size cars; small cars roll harder.',
  ),
  'small-gauge-resistance': w(
    'Small-gauge resistance',
    'What is the resistance of a small train on a grade?',
    'mass=35long_ton grade=1in100',
  ),
  'tractive-effort': w(
    'Tractive effort',
    'How hard do the cylinders pull?',
    'pressure=100psi bore=2.75in stroke=3.5in wheel=9in',
    'Never more than adhesion allows.',
  ),
  'tractive-power-per-pressure': w(
    'Tractive power per psi',
    'How hard do the cylinders pull for each psi?',
    'bore=4-7/8in stroke=7in wheel=13.5in',
  ),
  'haulable-load': w(
    'Haulable load',
    'What can it haul?',
    'pull=120lbf engine=1050lb resistance=9N/kN grade=1.2%',
    'What can be hauled may be more than can be stopped.',
  ),
  'army-trailing-load': w(
    'Trailing load, army rule',
    'What can a full-size engine haul?',
    'tractive-effort=36000lbf engine=240000lb grade=1.5% degree=10° weather=0.8',
  ),
  'heywood-load': w(
    'Trailing load, Heywood’s rule',
    'What can a minimum-gauge engine haul?',
    'pressure=160psi bore=4-7/8in stroke=7in wheel=13.5in engine=3.75long_ton grade=1in50',
  ),
  'adhesion-limit': w(
    'Adhesion limit',
    'What can the wheels hold or pull before they slip?',
    'adhesion=0.2 load=800lbf',
  ),
  'adhesion-by-speed': w(
    'Adhesion by speed',
    'How much adhesion at speed, full-size rule?',
    'speed=20km/h',
    'Full-size, dry rail; small engines on dewy rail have far less.',
  ),
  'steam-power-pull': w('Pull from power', 'How hard can it pull at speed?', 'power=1.2kW speed=6mph'),
  'orifice-flow': w('Air through a hole', 'How much air passes a hole?', 'pressure=50psi diameter=1/8in'),
  'reservoir-equalisation': w(
    'Reservoir and cylinder',
    'What pressure is left when a reservoir fills a cylinder?',
    'reservoir=2.5l pressure=70psi cylinder=1l',
  ),
  'standard-atmosphere': w(
    'Pressure of the air',
    'How hard does the air press at an altitude?',
    'altitude=5000ft',
  ),
  'vacuum-limit': w(
    'Vacuum that can be had',
    'How much vacuum can there be at an altitude?',
    'altitude=5000ft',
  ),
  'brake-from-cylinder': w(
    'Brake force from a cylinder',
    'How hard does a cylinder brake?',
    'bore=3in pressure=60kPa lever=2.6 friction=0.28',
  ),
  'block-friction': w(
    'Friction of a cast-iron block',
    'How does block friction fall with speed?',
    'speed=5mph',
  ),
  'air-mass': w('Mass of air in a vessel', 'How much air is in a reservoir?', 'volume=2l pressure=80psi'),
  'vessel-filling': w(
    'Filling a vessel',
    'How long until a cylinder or reservoir is full, through a choke?',
    'volume=0.2l diameter=2mm supply=60psi to=45psi',
    'From a supply that does not fall. The truth lies between the two times, small parts nearer the longer.',
  ),
  'vessel-emptying': w(
    'Emptying a vessel',
    'How long until a vessel is let down, through a hole?',
    'volume=2l diameter=1/8in from=80psi to=5psi',
    'Down to the last it takes long: ask for a little above nothing.',
  ),
  'draw-down-time': w(
    'Drawing down a vacuum',
    'How long does an ejector or pump take?',
    'volume=8l suction=2l/s to=18inHg greatest=24inHg',
    'At sea level, without leaks; suction at the pressure of the pipe, not free air.',
  ),
  'pump-up-time': w(
    'Pumping up a reservoir',
    'How long does a compressor take?',
    'volume=10l free-air=0.5l/s to=90psi',
  ),
  'cylinder-from-reduction': w(
    'Cylinder pressure from a reduction',
    'What does a reduction of the pipe put into the cylinder?',
    'reduction=20psi charge=70psi reservoir=2.5l swept=0.8l clearance=0.2l',
  ),
  'vacuum-chamber': w(
    'Vacuum left in a chamber',
    'How much vacuum is left when the piston has risen?',
    'vacuum=18inHg chamber=0.6l swept=0.11l',
  ),
  'hand-brake': w(
    'Hand brake',
    'How hard does a handwheel press the blocks?',
    'pull=30lbf radius=4in lead=5mm lever=3',
    'Take the pull that the weakest person keeps up, measured.',
  ),
  'equilibrium-cant': w(
    'Equilibrium cant',
    'What cant balances a speed?',
    'speed=6mph radius=75ft base=7.75in',
    'Trains also stop on curves: check the inward side.',
  ),
  'curve-speed': w(
    'Curve speed from cant',
    'How fast, with this cant and deficiency?',
    'radius=45ft base=7.75in cant=3/8in deficiency=1/2in',
  ),
  'curve-speed-by-degree': w(
    'Curve speed, federal rule',
    'How fast round a full-size curve?',
    'degree=5° cant=3in',
    'For standard gauge.',
  ),
  'centrifugal-force': w(
    'Centrifugal force',
    'How hard is the outward pull?',
    'mass=300kg speed=6mph radius=45ft',
  ),
  'overturning-speed': w(
    'Overturning speed',
    'At what speed does it tip over in a curve?',
    'radius=45ft base=7.75in height=24in',
    'The very edge, without wind, lean or rough track: stay far below.',
  ),
  'lean-to-lift': w(
    'Lean that lifts a wheel',
    'How far may people lean before a wheel lifts?',
    'mass=500lb people=180lb height=22in base=7.75in sideways=0.5m/s²',
    'How far their centre of gravity shifts, not their head. Negative: a wheel has lifted already. Offset is toward the inside of the curve; evenness is the lightest truck’s load by its even share; roll is how many times larger springs make a sideways moment. Jolts and rough track are left out.',
  ),
  'tilt-to-height': w(
    'Centre of gravity from a tilt test',
    'How high is the centre of gravity?',
    'angle=14° base=7.75in',
    'Tilt an empty car, held by ropes; nobody on or beside it.',
  ),
  'nadal-limit': w(
    'Flange climb limit',
    'How much sideways force may a flange bear?',
    'flange-angle=70° friction=0.36',
  ),
  'radius-of-degree': w('Radius of a degree of curve', 'What radius is a degree of curve?', 'degree=10°'),
  'degree-of-radius': w('Degree of a radius', 'What degree of curve is a radius?', 'radius=90ft'),
  'radius-of-versine': w(
    'Radius from a string',
    'What radius, from chord and mid-ordinate?',
    'chord=10ft versine=3-5/16in',
  ),
  'versine-of-radius': w(
    'Mid-ordinate of a curve',
    'What mid-ordinate has a chord in a curve?',
    'chord=10ft radius=45ft',
  ),
  'coupler-angle': w(
    'Coupler angle in a curve',
    'How far must couplers swing in a curve?',
    'radius=45ft truck-centres=60in overhang=21in shank=5in other-truck-centres=36in other-overhang=12in other-shank=5in',
    'Where a curve begins, and between curves of opposite hand, it is more: the outing check looks at the whole line.',
  ),
  'bar-pitch': w(
    'Angle of a bar over a crest',
    'How far must a bar between two vehicles turn up and down over a crest?',
    'radius=150ft truck-centres=60in overhang=21in shank=5in other-truck-centres=36in other-overhang=12in other-shank=5in higher=1/2in',
    'Where grades meet at a point it is more: the outing check looks at the whole line.',
  ),
  'chain-working-load': w(
    'Working load of a chain',
    'What may a chain carry?',
    'size=1/4in',
    'New and unworn chain, straight pull.',
  ),
  'weakest-link': w(
    'Weakest part',
    'What may chain, link, hook and eye carry together?',
    'chain=1900lbf link=1760lbf hook=700lbf attachment=1000lbf',
  ),
  'chain-snatch': w(
    'Snatch of a chain',
    'How hard does a chain catch a parted tail?',
    'mass=600kg other-mass=700kg slack=2in pull=150N stiffness=500kN/m',
    'No damping: the real peak is mostly less, but not to be relied on. Breaks hooks and links; a chain stretches first.',
  ),
  'chain-energy': w(
    'Catch by a chain that stretches',
    'At what load must a chain break to catch a parted tail?',
    'pull=301lbf slack=2in length=12in breaking=3200lbf',
    'A new chain; worn, bent or kinked links take less. Hooks and links must be as strong, or they go first.',
  ),
  'two-chains': w(
    'Two chains side by side',
    'Do two chains share a snatch?',
    'mass=600kg other-mass=700kg slack=2in slack-difference=1/4in pull=150N stiffness=500kN/m',
    'Of equal slack they share it; else the shorter takes it all until it has stretched by the difference.',
  ),
  impact: w(
    'Impact on a spring',
    'What happens when two vehicles meet?',
    'mass=9400kg speed=8.5m/s other-mass=11000kg stiffness=0.32MN/m',
  ),
  'buffer-stop': w(
    'Car into a spring buffer',
    'How far does a car, with the one it couples to, squeeze a spring buffer?',
    'mass=9400kg speed=8.5m/s coupled-mass=11000kg stiffness=0.32MN/m',
  ),
  'bar-snatch': w(
    'Snatch on a bar',
    'How far does a tow bar stretch in a snatch?',
    'mass=2000lb speed=5mph length=36in diameter=2in modulus=207GPa',
  ),
  'frog-angle': w('Angle of a frog', 'What angle has a frog number?', 'number=5'),
  'frog-number': w('Number of a frog', 'What number has a frog angle?', 'angle=11.421°'),
  'turnout-lead': w(
    'Lead of a turnout',
    'How far from the points lies the frog, and how sharp is the curve between?',
    'gauge=7.5in number=6',
    'Curved all the way; with a straight frog the lead is shorter and the curve sharper.',
  ),
  'turnout-radius': w(
    'Radius of a turnout',
    'How sharp is the diverging track, from lead and frog?',
    'gauge=7.5in number=6 lead=80in',
    'Held to a versine in its middle it should agree; if not, measure again.',
  ),
  'turnout-closure': w(
    'Closure of a turnout',
    'How long and how sharp is the closure rail between straight points and a straight frog?',
    'gauge=7.5in number=6 switch-length=24in heel-spread=1.25in heel-angle=2.98° toe-length=8in',
  ),
  'fouling-point': w(
    'Fouling point on straight tracks',
    'How far beyond the frog does a train stand clear?',
    'gauge=7.5in number=6 passing=15in standing=15in room=2in',
    'Both tracks straight beyond the frog. The siding table follows the curves, and the play and throw of this train.',
  ),
  'track-warp': w(
    'Warp of track',
    'How much is the track twisted?',
    'difference=3in along=62ft wheel-base=5ft',
  ),
  'wheel-fit': w(
    'Wheels in the flangeway',
    'Do wheels pass frog and guard rail?',
    'gauge=7.5in flangeway=7/32in back-to-back=7.12in wheel-check=7.281in',
    'The host’s own sheet decides.',
  ),
  'end-off-rail': w(
    'Coupler on a crest',
    'How far does the end of a car stand off the rail on a crest or in a sag?',
    'truck-centres=48in overhang=12in radius=100ft',
    'Of one end; two that meet differ by as much as their cars do, and more where the curve begins.',
  ),
  'pair-vertical-curve': w(
    'Least vertical curve for two cars',
    'How sharp a crest or sag do these two couplers take?',
    'truck-centres=48in overhang=12in other-truck-centres=66in other-overhang=15in room=3/8in',
    'Room: what the faces may stand out of line, less what springs and heights take already.',
  ),
  'face-tilt': w(
    'Couplers on twisted track',
    'How far does twist tilt two coupler faces apart at their edge?',
    'twist=4mm/m apart=8ft contact-width=7-3/4in face=1-1/2in',
    'What cant and twist take comes on top of what crest, sag and springs take.',
  ),
  'rail-rise': w(
    'Rail under a long wheelbase',
    'How far does a crest come up under a car?',
    'truck-centres=48in along=24in radius=100ft',
    'Springs under people, and wear of the wheels, take off more.',
  ),
  'wheel-check': w(
    'Check gauge of a wheelset',
    'Does this wheelset strike the point of the frog?',
    'back-to-back=53.375in flange=15/16in guard-check=54.125in',
    'Take the greatest back-to-back and the thicker flange.',
  ),
  overthrow: w(
    'Overthrow in a curve',
    'How far does a car hang over the track in a curve?',
    'radius=35ft truck-centres=48in overhang=12in',
    'Half the width comes on top, on either side.',
  ),
  sway: w(
    'Sway on springs',
    'How far does the top of a car sway on its springs, to either side?',
    'mass=500lb centre-height=18in aside=1in cant=1/4in contact-width=7-3/4in radius=45ft speed=6mph stiffness=3000N·m top=48in',
    'What the canted track itself leans comes on top.',
  ),
  'flange-play': w(
    'Play of the flanges',
    'How far does a wheelset move between the rails?',
    'gauge=7.5in back-to-back=7.12in flange=0.161in',
  ),
  'tread-on-rail': w(
    'Tread that lies on the rail',
    'Does a wheel drop in where the gauge is wide?',
    'gauge=7.25in widening=1/8in back-to-back=6.86in flange=5/32in width=3/4in',
    'Rails that give way under load, and a worn rail, take more off.',
  ),
  'grade-of-rise': w('Grade from rise and run', 'What grade is it?', 'rise=2in run=10ft'),
  'child-weight': w(
    'Weight of a child',
    'What does a child of this age weigh?',
    'age-months=96.5 girl=1 percentile=90%',
    'US children of the 1960s to 1990s; today more than one in twenty weighs above P95. Weigh where it matters. girl=0 is a boy.',
  ),
};
