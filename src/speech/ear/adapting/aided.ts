import type { HearingAid } from '../../../core/voice-profile/voice-profile';
import type { AdaptedMeans } from '../engine-means';
import { type ModelFile, phonesOf } from './acoustics';
import { transformed } from './mean-transform';
import { readGaussians, withFigures } from './means-file';

/**
 * The model's means as a profile changes them; null where the profile changes nothing or was made for another model, and
 * where a file cannot be read: the decoder needs them too, and will say so.
 */
export async function adaptedMeans(
  { means, model }: HearingAid,
  folder: string,
  file: ModelFile,
): Promise<AdaptedMeans | null> {
  if (!means || model.folder !== folder) return null;
  const files = await Promise.all([file('means'), file('mdef')]).catch(() => null);
  if (!files) return null;
  const [bytes, definition] = files;
  const read = readGaussians(bytes);
  if (!read.ok || read.value.checksum !== model.checksum) return null;
  const { streams, densities, width, values } = read.value;
  const own = { phones: phonesOf(definition), streams, densities, width, means: values };
  return { means: withFigures(bytes, read.value, transformed(means, own)), file };
}
