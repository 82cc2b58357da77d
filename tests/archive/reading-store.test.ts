import { addChannel, openTest, temporaryFile } from './helpers.ts';
import { readingStoreContract, type StoreUnderTest } from './reading-store.contract.ts';

function over(path: () => string): () => StoreUnderTest {
  return () => {
    const archive = openTest(path());
    return {
      store: archive.readings,
      channel: addChannel(archive, 'chamber'),
      other: addChannel(archive, 'load'),
    };
  };
}

readingStoreContract(
  'rows in memory',
  over(() => ':memory:'),
);
readingStoreContract('rows in a file', over(temporaryFile));
