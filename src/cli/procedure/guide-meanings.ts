/**
 * What a field means and in which unit, where the schema itself does not say. By heading and field as in the tables of
 * the guide. What the schema says itself comes first; a test holds that every field has a meaning and that none here is idle.
 */
export const MEANINGS: Readonly<Record<string, string>> = {
  'document format': 'The version of this format: 1.',
  'document language':
    'The language of everything in it that is heard, spoken or shown: the name of a folder under grammars, such as `en`.',
  'document id': 'The name of the procedure in logs. Call the file the same.',
  'document title': 'What the job is called, spoken when it begins.',
  'document edition': 'Which state of the document this is; a job keeps the one it began with.',
  'document source': 'Where the figures come from. Printed on the job card.',
  'document machine': 'What is worked on.',
  'document tools': 'Tools by id.',
  'document parts': 'Parts and consumables by id.',
  'document patterns': 'Sets of fasteners by id.',
  'document loose-ends': 'What must come back before a milestone, by id.',
  'document timers': 'Waits by id.',
  'document rules': 'Ways to work readings out, by id; a step that measures names them.',
  'document limits': 'Limits of measured values by id.',
  'document phases': 'The job itself: phases in order, each with its steps.',

  'tools say': 'What it is called when it is announced.',
  'tools drive': 'Its drive as printed on the card, with its unit: 1/2 in.',
  'tools socket': 'The socket on it, with its unit: 15 mm.',

  'parts say': 'What it is called.',
  'parts quantity': 'How many; of a consumable, how many litres, tubes or pieces.',
  'parts use': 'Bought new and used once, used again as it is, or measured first.',
  'parts consumable': 'True for oil, sealer and the like: they are listed apart on the card.',

  'patterns say': 'What the set is called: left head.',
  'patterns viewed-from': 'How the picture is held, so that left and right are the same for everyone.',
  'patterns outline': 'The edge of the casting, point by point.',
  'patterns landmarks': 'What can be seen on the casting, with its name and place.',
  'patterns fasteners': 'Each fastener with its place. A pattern has one of fasteners, circle and grid.',

  'patterns details': 'What some of the fasteners have in common.',
  'fasteners at': 'Its place.',

  'fasteners number': 'The number in the manual’s picture.',
  'fasteners say': 'Where it is, in words that can be seen: rear, exhaust side.',
  'fasteners row': 'Its row; inside a row only the number is said.',

  'circle count': 'How many.',
  'circle diameter': 'Diameter of the circle in millimetres.',

  'grid columns': 'The name of each column and its place in millimetres to the right.',
  'grid rows': 'The name of each row and its place in millimetres down.',
  'grid numbers': 'The numbers row by row as in the picture; 0 for none.',

  'details numbers': 'The fasteners it is about.',
  'details group': 'A name for them, used by “of:” in a pass.',
  'details length': 'Length under the head, with its unit.',
  'details hole': 'Blind, open to the water jacket (wet), or through.',
  'details sealer': 'What goes on the thread.',

  'loose-ends say': 'What it is called when “what’s still off?” is answered.',
  'loose-ends kind': 'Taken off, unplugged, opened, or a rag or plug put in.',

  'timers say': 'What is waited for.',
  'timers time': 'How long, with its unit: 10 min, 4 h.',

  'limits say': 'What is limited.',
  'limits least': 'The lowest value allowed, with its unit.',
  'limits most': 'The highest value allowed, with its unit.',

  'phase id': 'The name of the phase in the log.',
  'phase say': 'What it is called when it begins.',
  'phase steps': 'Its steps in order.',

  'block kind': 'each: its steps are done in full for the first side, then in full for the next.',
  'block steps': 'The steps that are repeated together.',

  'step id': 'The name of the step in the log; each is used once in a document.',
  'step kind': 'What is done; do when left out.',
  'step say': 'What to do, in sentences of twelve words at most.',
  'step tools': 'Tools by id.',
  'step parts': 'Parts by id.',
  'step milestone': 'Doing this step passes this point: whatever blocks it must be closed by then.',

  'tighten and slacken pattern': 'The pattern that is worked, by id.',
  'tighten and slacken passes': 'Its passes in order.',
  'tighten and slacken tool': 'The tool of all passes that do not name their own.',
  'tighten and slacken lubrication': 'Dry, oiled or what else the threads get; spoken with the torque.',

  'measure unit': 'The unit of all its readings.',
  'measure between': 'The lowest and the highest value that can be meant, in the unit of the readings.',
  'measure decimals': 'How many decimals are read.',
  'measure works-out': 'Answered when the readings are in, and when asked for.',
  'fill works-out': 'For a rule of the kind coolant.',
  'measure limit': 'The limit they are held against, by id.',

  'wait timer': 'The timer to wait for, by id; it starts when the step is reached.',

  'fill what': 'What is filled in.',
  'fill amount': 'How much, with its unit: 6.0 L.',

  'pass id': 'The name of the pass, used once in its step.',
  'pass say': 'What the pass is called when it begins.',
  'pass torque': 'The torque with its unit, as printed.',
  'pass swings': 'In how many swings of the bar an angle is turned.',
  'pass of': 'Only these fasteners.',
  'pass order': 'An order of its own, instead of the pattern’s.',
  'pass generated': 'Agrees to an order worked out by rule on a head.',
  'pass tool': 'The tool, by id.',
  'pass lubrication': 'As in the step, for this pass alone.',

  'recovery early': 'It clicked before it should have.',
  'recovery soft': 'It went soft.',
  'recovery over': 'It was turned too far.',
  'recovery under': 'Its torque after the angle was not over the floor.',
  'recovery snapped': 'It broke.',
  'recovery out-of-order': 'It was done before its turn.',
  'recovery replaced': 'A new one was put in half-way.',
  'a rule action': 'What is done again; see below.',
  'a rule say': 'What is told.',

  'read-back ask': 'What is asked.',
  'read-back right': 'The right answers by id, each with the ways to say it.',
  'read-back wrong': 'At least two wrong ones that could well be given.',
  'read-back if-wrong': 'What is told after a wrong answer.',
  'finding ask': 'What is asked.',
  'finding answers': 'The answers by id, each with the ways to say it.',
  'only-if step': 'The step that asks.',
  'only-if answers': 'The answers that lead here, by id.',
  'stow where': 'The bag, slot or card.',
  'stow what': 'What goes in, and which way up.',
  'stow quantity': 'How many.',
  'landmarks say': 'What it is called.',
  'landmarks at': 'Where it is.',
  'lines say': 'A name for each.',
  'lines at': 'A place for each, in millimetres.',
};
