/** That a property fails is all that is asked: the smallest input that makes it fail is not looked for, and the inputs are the same for each change, so that a score can be had again. */
import * as fc from 'fast-check';

fc.configureGlobal({ endOnFailure: true, seed: 1 });
