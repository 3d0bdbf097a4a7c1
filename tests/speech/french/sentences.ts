/** A place of the practice plate, and what is said there in the recording of that name. */
export type Sentence = { readonly file: string; readonly node: string; readonly words: string };

const at = (node: string, sentences: Readonly<Record<string, string>>): readonly Sentence[] =>
  Object.entries(sentences).map(([file, words]) => ({ file: `${file}.wav`, node, words }));

export const SENTENCES: readonly Sentence[] = [
  ...at('ready.clamp', {
    stop: 'stop',
    silence: 'silence',
    suite: 'quelle est la suite',
    place: 'où en suis je',
    again: 'répète encore',
    cautions: 'quelles précautions',
    words: 'quels mots maintenant',
    step: 'cette étape est terminée',
    wait: 'attends une minute',
    ears: "n'écoute plus maintenant",
  }),
  ...at('ready.corner', {
    right: 'je vois en haut côté poignée',
    wrong: 'je vois en haut près du mur',
  }),
  ...at('tighten.tighten-plate.first.set', {
    time: "j'ai assez de temps",
    'no-time': 'pas le temps maintenant',
    fifteen: 'réglée à quinze',
    unit: 'réglée à quinze newtons mètres',
    'twenty-five': 'clé réglée à vingt cinq',
    'seventy-one': 'réglée à soixante et onze',
    digits: 'réglée à un six cinq',
  }),
  ...at('tighten.tighten-plate.first.work', {
    one: 'boulon un terminé',
    two: 'boulon deux terminé',
    three: 'boulon trois terminé',
    left: 'combien il en reste',
    asked: "est ce que j'ai fait le boulon un",
    torque: 'quel couple de serrage',
    back: 'annule la dernière',
    click: 'la clé a déclenché',
    snapped: 'le boulon a cassé',
    dropped: "j'ai fait tomber la clé",
    'in-pounds': 'en livres pieds',
  }),
];

/** Talk that is meant for nobody. */
export const STRAY: readonly Sentence[] = at('tighten.tighten-plate.first.work', {
  'stray-weather': 'il fait beau ce matin',
  'stray-lamp': 'je ne sais pas où est la lampe',
  'stray-lunch': 'on mange à midi',
  'stray-phone': 'le client a téléphoné hier',
  'stray-door': 'ferme la porte',
});
