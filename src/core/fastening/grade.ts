/** Property classes of ISO 898-1 and grades of SAE J429, as documents name them. */
export const GRADES = ['class 8.8', 'class 10.9', 'class 12.9', 'grade 5', 'grade 8'] as const;

export type Grade = (typeof GRADES)[number];

export const isGrade = (text: string): text is Grade => GRADES.some((grade) => grade === text);
