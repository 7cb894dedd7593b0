package match

import "math"

// far is more than any cost.
const far = math.MaxInt / 4

// mostN is the largest number of pieces of a side; the sums stay small.
const mostN = 1 << 16

// A net is the pairs of one family.
type net struct {
	short, extra []int // positions in the lists of the caller
	have, want   []int // pieces of each
	pairs        []Pair
	from, to     []int // of each pair, positions in short and extra
}

func (f *net) build(short, extra []Side, k Known) {
	for _, i := range f.short {
		f.have = append(f.have, min(short[i].N, mostN))
	}
	for _, j := range f.extra {
		f.want = append(f.want, min(extra[j].N, mostN))
	}
	for a, i := range f.short {
		for b, j := range f.extra {
			mark := k.MarkRead != nil && k.MarkRead(i, j)
			place := k.SamePlace != nil && k.SamePlace(i, j)
			if c, ok := cost(short[i], extra[j], mark, place); ok {
				f.pairs = append(f.pairs, Pair{Short: i, Extra: j, Cost: c})
				f.from, f.to = append(f.from, a), append(f.to, b)
			}
		}
	}
}

// An arc of the flow; the one after an even arc is its way back.
type arc struct{ to, room, cost int }

// cheapest is the most pieces that can be matched and the least that costs.
// All costs are scaled, and a pair that is tilted costs tilt more.
func (f *net) cheapest(scale, tilted, tilt int) (n, cost int) {
	s, x := len(f.have), len(f.want)
	source, sink := s+x, s+x+1
	var arcs []arc
	out := make([][]int, s+x+2)
	add := func(a, b, room, cost int) {
		out[a] = append(out[a], len(arcs))
		out[b] = append(out[b], len(arcs)+1)
		arcs = append(arcs, arc{b, room, cost}, arc{a, 0, -cost})
	}
	for i, k := range f.have {
		add(source, i, k, 0)
	}
	for j, k := range f.want {
		add(s+j, sink, k, 0)
	}
	for e, p := range f.pairs {
		c := p.Cost * scale
		if e == tilted {
			c += tilt
		}
		add(f.from[e], s+f.to[e], min(f.have[f.from[e]], f.want[f.to[e]]), c)
	}
	for {
		room, c := push(arcs, out, source, sink)
		if room == 0 {
			return n, cost
		}
		n, cost = n+room, cost+room*c
	}
}

// push sends as much as it can along one cheapest way from source to sink.
func push(arcs []arc, out [][]int, source, sink int) (room, cost int) {
	dist, by := make([]int, len(out)), make([]int, len(out))
	for i := range dist {
		dist[i] = far
	}
	dist[source] = 0
	for again, round := true, 0; again && round < len(out); round++ {
		again = false
		for v := range out {
			if dist[v] == far {
				continue
			}
			for _, e := range out[v] {
				if a := arcs[e]; a.room > 0 && dist[v]+a.cost < dist[a.to] {
					dist[a.to], by[a.to], again = dist[v]+a.cost, e, true
				}
			}
		}
	}
	if dist[sink] == far {
		return 0, 0
	}
	room = far
	for v := sink; v != source; v = arcs[by[v]^1].to {
		room = min(room, arcs[by[v]].room)
	}
	for v := sink; v != source; v = arcs[by[v]^1].to {
		arcs[by[v]].room -= room
		arcs[by[v]^1].room += room
	}
	return room, dist[sink]
}
