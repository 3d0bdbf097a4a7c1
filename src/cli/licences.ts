import { thirdPartyTable } from './licences/acknowledgements';

console.log(thirdPartyTable());
