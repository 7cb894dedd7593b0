package loadup

// A set is a set of small numbers, one bit each.
type set []uint64

func newSet(n int) set { return make(set, (n+63)/64) }

func (s set) has(i int) bool { return s[i>>6]>>(i&63)&1 == 1 }
func (s set) add(i int)      { s[i>>6] |= 1 << (i & 63) }
func (s set) remove(i int)   { s[i>>6] &^= 1 << (i & 63) }

func (s set) empty() bool {
	for _, w := range s {
		if w != 0 {
			return false
		}
	}
	return true
}
