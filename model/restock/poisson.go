package restock

import (
	"math"

	"tarpside/model"
	"tarpside/model/sum"
)

// Service is the share of waits for an order in which the store does not run
// out; ServiceZ is the same for the normal curve.
const Service = 0.95

// FewUses is how many uses a year are too few for any formula: the number is
// noise, and a person sets the least and the most by hand.
const FewUses = 10

// weeksYear is how many weeks a year has, for that.
const weeksYear = 52

// mostMean is the largest mean that is worked with: for more, the normal
// curve of Point is as good.
const mostMean = 1000.0

// Poisson is the chance of k uses or fewer where the mean is so many, for
// means up to a thousand.
func Poisson(k int, mean float64) float64 {
	mean = sum.Sane(mean, 0, mostMean)
	if k < 0 {
		return 0
	}
	if mean == 0 {
		return 1
	}
	all, log := 0.0, -mean
	for i := 0; i <= min(k, int(2*mostMean)); i++ {
		if i > 0 {
			log += math.Log(mean) - math.Log(float64(i))
		}
		all += math.Exp(log)
	}
	return math.Min(all, 1)
}

// Loss is how many uses, on the average, a store of k pieces cannot serve.
func Loss(k int, mean float64) float64 {
	mean = sum.Sane(mean, 0, mostMean)
	out := mean
	for i := range min(max(k, 0), int(2*mostMean)) {
		out -= 1 - Poisson(i, mean)
	}
	return math.Max(0, out)
}

// Cover is the fewest pieces that are enough in at least the share of cases,
// for uses that come by ones and twos.
func Cover(mean, share float64) int {
	share = sum.Sane(share, 0, 0.9999)
	k := 0
	for Poisson(k, mean) < share && k < int(2*mostMean) {
		k++
	}
	return k
}

// A Level is when to order a line of the store that moves slowly.
type Level struct {
	Point int  // order when no more than this is left
	Few   bool // under ten uses a year: set it by hand, this is a hint
	Why   string
}

// SlowMover is the level of a line of the store by the Poisson table: what is
// enough for 19 of 20 waits.
func SlowMover(st *model.Stock) Level {
	week, lead := sum.Sane(st.WeeklyMean, 0, mostMean), sum.Sane(st.LeadWeeks, 0, weeksYear)
	l := Level{Point: Cover(week*lead, Service), Few: week*weeksYear < FewUses,
		Why: "enough for 19 of 20 waits, as uses come by ones and twos (Poisson)"}
	if l.Few {
		l.Why = "under ten uses a year: too few to tell; set the least and the most by hand"
	}
	return l
}
