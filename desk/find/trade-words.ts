/**
 * The trade's words, on both shores of the Atlantic and in the workshop: whoever seeks one finds what is said with another
 * of its group. Common practice, no source.
 */
export const groups: readonly (readonly string[])[] = [
  ['truck', 'bogie', 'bogey'],
  ['car', 'carriage', 'coach', 'wagon', 'vehicle'],
  ['engine', 'locomotive', 'loco'],
  ['coupler', 'coupling', 'drawbar', 'drawhook'],
  ['conductor', 'guard'],
  ['engineer', 'driver', 'operator'],
  ['rider', 'passenger', 'people', 'person', 'public'],
  ['grade', 'gradient', 'hill', 'bank', 'slope', 'incline', 'fall', 'climb'],
  ['tie', 'sleeper'],
  ['switch', 'points', 'turnout', 'frog'],
  ['cant', 'superelevation', 'banking'],
  ['curve', 'radius', 'bend'],
  ['track', 'rail', 'rails', 'road'],
  ['gauge', 'gage'],
  ['stop', 'stopping', 'brake', 'braking', 'halt'],
  ['runaway', 'breakaway', 'parting', 'parts', 'divide'],
  ['cylinder', 'bore', 'ram', 'piston'],
  ['lever', 'rigging', 'leverage'],
  ['block', 'blocks', 'shoe', 'shoes'],
  ['seat', 'seats', 'bench', 'seating'],
  ['tip', 'tips', 'overturn', 'overturning', 'topple', 'layover', 'lean'],
  ['derail', 'derailment', 'climb', 'flange'],
  ['adhesion', 'grip', 'slip', 'slide', 'traction', 'friction'],
  ['weight', 'mass', 'tare', 'heavy'],
  ['pull', 'haul', 'tractive', 'effort', 'start'],
  ['gap', 'headway', 'spacing', 'interval', 'following'],
  ['flag', 'protection', 'detonator'],
  ['sight', 'visibility', 'view', 'see'],
  ['speed', 'fast', 'limit', 'mph'],
  ['vacuum', 'ejector'],
  ['air', 'compressor', 'pneumatic', 'pressure'],
  ['battery', 'motor', 'electric'],
  ['sand', 'sander', 'sanded'],
  ['wet', 'rain', 'damp', 'greasy', 'leaves'],
  ['chain', 'chains', 'shackle'],
  ['wheel', 'wheels', 'wheelset', 'axle'],
  ['host', 'rules', 'club', 'owner'],
  ['card', 'sheet', 'print', 'paper', 'pdf'],
  ['share', 'code', 'link', 'send'],
  ['twist', 'warp', 'crosslevel'],
  ['parking', 'hold', 'stand', 'standing', 'handbrake', 'chock'],
  ['survey', 'csv', 'gpx', 'level', 'levelling'],
];

/** Words that say nothing by themselves. */
export const hollow: ReadonlySet<string> = new Set(
  'a an and are as at be by can do does far for from hard high how i if in is it its long many may me might much must my of on or our should that the their them there they this to up was we what when where which who will with would you your'.split(
    ' ',
  ),
);
