// Package tally counts things and sums time, and says how much counts prove. It has
// two halves: stretches of time with the expected number of moments in each part, and the
// exact arithmetic of counts over exposures. It has never heard of what it counts.
//
// # Time
//
// Instants are time.Time, lengths time.Duration (whole nanoseconds), so that
// cutting a stretch in any way and adding the parts gives exactly the whole.
// Every stretch is half open: it holds its beginning and not its end, so two
// stretches that meet share nothing and miss nothing.
//
// An uncertain moment is uniform on [Lo, Hi]. Counts per part are therefore
// expected values and need not be whole numbers; over parts that cover
// everything they add up to the number of moments, to rounding (1e-12 of it).
//
// A total of time takes each uncertain end at the middle of its spread: for ends
// in a certain order that is the expected length. Where a stretch with uncertain
// ends is cut, Loose gives the expected time in each part, and the parts again
// add up to the expected length.
//
// # Rates
//
//   - one rate: RateOf, with Garwood's interval; one share: ShareOf, with that of Clopper
//     and Pearson. Both take expected counts too.
//   - two rates: TwoRates, exact given their sum; p is twice the smaller tail and never
//     contradicts the interval.
//   - several at once: Omnibus if everything counted is independent; Within if strata have
//     levels of their own; Between if whole clusters belong to the groups. The first is
//     exact where that is quick, the others draw from a seed.
//   - several drawn toward each other: FitPrior, gamma-Poisson by maximum likelihood, pooled
//     where the fit runs to infinity.
//   - which of two ways to cut tells more: FitBands, a deviance; Resample for its interval.
//   - a list of p-values: Holm.
//
// Counts and exposures are float64 in any unit of the caller's. Intervals are good to 1e-8
// of their ends (checked against sums of the probabilities at 200 bits), p-values that are
// exact to 1e-6, fits to 1e-6, drawn ones to what their number of draws allows. The same
// seed gives the same figures on every machine.
//
// # Checked
//
// Intervals are made by gonum's incomplete gamma and beta functions. Two other routes agree: quantiles
// of scipy 1.10.1 (testdata/intervals.csv, Python, 78 of them, to 8 digits), each checked against mpmath 1.2.1, and
// the sums of the Poisson and binomial probabilities themselves at 200 bits, which know no special
// function (interval_test.go). Published and worked values, each with its source in its test:
//
//   - one rate: 0, 1, 2, 3, 4, 5, 7, 10 and 25 counted; 137 in 24.19893 (R's poisson.test); blanks
//     in 3, 6, 10 and 20 hours;
//   - two rates, twice the smaller tail: 11/800 against 21/3011 (R), 2/17877 against 9/16660
//     (rateratio.test), and three more;
//   - one share: 682 of 925 (R's binom.test); two side by side: seven outcomes from 5-0 to 15-5;
//   - several: 4, 7, 1, 0 counted in 6.5, 9.25, 5, 3.25 hours, ordered by likelihood ratio;
//   - drawn together: the pumps of Gaver and O'Muircheartaigh 1987 by maximum likelihood, and a set
//     for which that runs to infinity and is pooled;
//   - ten occasions: scatter, jackknife, resampled interval; a list of five p by Holm.
//
// Other orderings of outcomes, the moment estimator and the false discovery rate have published
// values too and are not used.
//
// # Not done
//
// Spreads other than the uniform, ends that depend on each other, counts censored by a
// rule to stop, more than one thing that varies at a time (use strata), trends within
// ordered groups, and any correction of resampled intervals from few clusters
// (FewClusters says when to warn).
package tally
