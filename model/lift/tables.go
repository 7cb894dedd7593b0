package lift

import "math"

// The limits and constants of the equation in one set of units. The metric
// ones are the manual's own and no exact conversions: 51 lb are 23.13 kg.
type units struct {
	name, length       string
	constant           float64 // LC
	near, far          float64 // H: nearer counts as near; beyond far HM is 0
	high               float64 // V: above it VM is 0
	knuckle, slope     float64 // VM = 1 - slope |V - knuckle|
	short, long, carry float64 // D: shorter counts as short; beyond long DM is 0; DM = 0.82 + carry / D
}

var (
	american = units{name: "lb", length: "in", constant: 51, near: 10, far: 25, high: 70, knuckle: 30, slope: 0.0075, short: 10, long: 70, carry: 1.8}
	metric   = units{name: "kg", length: "cm", constant: 23, near: 25, far: 63, high: 175, knuckle: 75, slope: 0.003, short: 25, long: 175, carry: 4.5}
)

// hm is the horizontal multiplier, table 1.
func (u units) hm(h float64) float64 {
	if h > u.far {
		return 0
	}
	return u.near / max(h, u.near)
}

// vm is the vertical multiplier, table 2.
func (u units) vm(v float64) float64 {
	if v > u.high {
		return 0
	}
	return 1 - u.slope*math.Abs(v-u.knuckle)
}

// dm is the distance multiplier, table 3. Where the load travels the shortest
// distance or less it is 1.
func (u units) dm(d float64) float64 {
	switch {
	case d > u.long:
		return 0
	case d <= u.short:
		return 1
	}
	return 0.82 + u.carry/d
}

// am is the asymmetric multiplier, table 4.
func am(degrees float64) float64 {
	if degrees > 135 {
		return 0
	}
	return 1 - 0.0032*degrees
}

// table5 is the frequency multiplier: lifts a minute, then for up to 1, 2 and
// 8 hours the multiplier where the lift starts below knuckle height and where
// it starts at that height or above. The rows from 11 on are from memory, but
// for the last five of "up to 1 hour, at or above".
var table5 = []struct {
	often float64
	fm    [3][2]float64
}{
	{0.2, [3][2]float64{{1, 1}, {0.95, 0.95}, {0.85, 0.85}}},
	{0.5, [3][2]float64{{0.97, 0.97}, {0.92, 0.92}, {0.81, 0.81}}},
	{1, [3][2]float64{{0.94, 0.94}, {0.88, 0.88}, {0.75, 0.75}}},
	{2, [3][2]float64{{0.91, 0.91}, {0.84, 0.84}, {0.65, 0.65}}},
	{3, [3][2]float64{{0.88, 0.88}, {0.79, 0.79}, {0.55, 0.55}}},
	{4, [3][2]float64{{0.84, 0.84}, {0.72, 0.72}, {0.45, 0.45}}},
	{5, [3][2]float64{{0.80, 0.80}, {0.60, 0.60}, {0.35, 0.35}}},
	{6, [3][2]float64{{0.75, 0.75}, {0.50, 0.50}, {0.27, 0.27}}},
	{7, [3][2]float64{{0.70, 0.70}, {0.42, 0.42}, {0.22, 0.22}}},
	{8, [3][2]float64{{0.60, 0.60}, {0.35, 0.35}, {0.18, 0.18}}},
	{9, [3][2]float64{{0.52, 0.52}, {0.30, 0.30}, {0, 0.15}}},
	{10, [3][2]float64{{0.45, 0.45}, {0.26, 0.26}, {0, 0.13}}},
	{11, [3][2]float64{{0.41, 0.41}, {0, 0.23}, {0, 0}}},
	{12, [3][2]float64{{0.37, 0.37}, {0, 0.21}, {0, 0}}},
	{13, [3][2]float64{{0, 0.34}, {0, 0}, {0, 0}}},
	{14, [3][2]float64{{0, 0.31}, {0, 0}, {0, 0}}},
	{15, [3][2]float64{{0, 0.28}, {0, 0}, {0, 0}}},
}

// printed is the last row of table 5 that was seen in print whole.
const printed = 10

// fm is table 5 for so many lifts a minute over so many hours, 8 at most,
// from a start at v. Between two rows it is a straight line; fewer than 0.2
// lifts a minute count as 0.2, more than 15 are none.
func (u units) fm(often, hours, v float64) float64 {
	duration, height := 2, 0
	switch {
	case hours <= 1:
		duration = 0
	case hours <= 2:
		duration = 1
	}
	if v >= u.knuckle {
		height = 1
	}
	last := table5[0]
	for _, row := range table5 {
		if often <= row.often {
			b := row.fm[duration][height]
			if often <= last.often {
				return b
			}
			a := last.fm[duration][height]
			return a + (b-a)*(often-last.often)/(row.often-last.often)
		}
		last = row
	}
	return 0
}

// cm is the coupling multiplier, table 7, of a grip at height v.
func (u units) cm(g Grip, v float64) float64 {
	switch {
	case g == Poor:
		return 0.90
	case g == Fair && v < u.knuckle:
		return 0.95
	}
	return 1
}
