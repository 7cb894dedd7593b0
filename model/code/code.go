// Package code makes and reads the short codes on labels and slips: numbers
// and ids with a check character that catches a wrong key and two neighbours
// swapped.
package code

import (
	"errors"
	"fmt"
	"hash/fnv"
	"math"
	"strings"

	"tarpside/model"
)

// digits are the 32 of Douglas Crockford's base 32 and then the four letters
// that he leaves out, which a number never has but an id may.
const digits = "0123456789ABCDEFGHJKMNPQRSTVWXYZILOU"

// checks are the 37 check symbols of the same.
const checks = "0123456789ABCDEFGHJKMNPQRSTVWXYZ*~$=U"

// Base32 writes a number in Crockford's base 32.
func Base32(n uint64) string {
	var b [13]byte // 5 bits each
	i := len(b)
	for {
		i--
		b[i] = digits[n%32]
		if n /= 32; n == 0 {
			return string(b[i:])
		}
	}
}

// Number reads a number in Crockford's base 32, without a check symbol: in
// any case, i and l as 1, o as 0, hyphens left out.
func Number(text string) (uint64, error) {
	var n uint64
	any := false
	for _, r := range strings.ToUpper(text) {
		switch r {
		case '-':
			continue
		case 'I', 'L':
			r = '1'
		case 'O':
			r = '0'
		}
		v := strings.IndexRune(digits[:32], r)
		if v < 0 {
			return 0, fmt.Errorf("%q is no letter of a code", r)
		}
		if n > math.MaxUint64/32 {
			return 0, fmt.Errorf("%q is too long for a code", text)
		}
		n, any = n*32+uint64(v), true
	}
	if !any {
		return 0, errors.New("there is no code")
	}
	return n, nil
}

// Check is the check symbol of a number: what is left after division by 37.
func Check(n uint64) byte { return checks[n%37] }

// checkOf is the check symbol of an id: that of the number which it is in
// base 32, hyphens left out. The four letters that are no digits there count
// as 32 to 35. One wrong character, or two neighbours swapped, change it.
func checkOf(id string) byte {
	n := 0
	for _, r := range id {
		if r != '-' {
			n = (n*32 + strings.IndexRune(digits, r)) % 37
		}
	}
	return checks[n]
}

// damm is the quasigroup of order 10 of H. Michael Damm's dissertation (2004).
var damm = [10]string{"0317598642", "7092154863", "4206871359", "1750983426", "6123045978",
	"3674209581", "5869720134", "8945362017", "9438617205", "2581436790"}

// Damm is the check digit of a decimal number. The number with it behind has
// the check digit 0.
func Damm(number string) (byte, error) {
	at := byte('0')
	for i := range len(number) {
		if number[i] < '0' || number[i] > '9' {
			return 0, fmt.Errorf("%q is no decimal number", number)
		}
		at = damm[at-'0'][number[i]-'0']
	}
	return at, nil
}

// What a label stands on. The sign is before the check symbol.
const (
	Piece byte = '.'
	Slot  byte = ':'
)

// longest is the longest id that a label carries as it is: as many bars as a
// common label has room for.
const longest = 14

// Label is the code of a piece or a slot: its id, the sign of what it is and
// the check symbol. An id that is long or has other characters than capitals,
// figures and hyphens is told by + and a number made from it, which is always
// the same.
func Label(what byte, id string) string {
	body := id
	if !plain(id) {
		h := fnv.New64a()
		h.Write([]byte(id))
		body = fmt.Sprintf("+%08s", Base32(h.Sum64()>>24))
	}
	return body + string(what) + string(checkOf(strings.TrimPrefix(body, "+")))
}

func plain(id string) bool {
	figures := 0
	for _, r := range id {
		switch {
		case r == '-':
		case r < 128 && strings.ContainsRune(digits, r):
			figures++
		default:
			return false
		}
	}
	return figures > 0 && len(id) <= longest
}

// Meant tells whether a text has the form of a label: something, the sign of
// what it is, and one character more.
func Meant(text string) bool {
	text = strings.ToUpper(strings.TrimSpace(text))
	n := len(text) - 2
	return n >= 1 && (text[n] == Piece || text[n] == Slot)
}

// Find tells what a label stands for, as a reader or a person typed it. The
// error says what is wrong with it.
func Find(d *model.Department, label string) (what byte, id string, err error) {
	label = strings.ToUpper(strings.TrimSpace(label))
	n := len(label) - 2
	if !Meant(label) {
		return 0, "", fmt.Errorf("%q is no label of ours: those end in a point or a colon and one character", label)
	}
	what, body := label[n], label[:n]
	if bare := strings.TrimPrefix(body, "+"); strings.Trim(bare, digits+"-") != "" || checkOf(bare) != label[n+1] {
		return 0, "", fmt.Errorf("%q was read or typed wrong: its last character does not fit. Try again", label)
	}
	var found []string
	for id := range ids(d, what) {
		if Label(what, id) == label {
			found = append(found, id)
		}
	}
	switch len(found) {
	case 1:
		return what, found[0], nil
	case 0:
		return 0, "", fmt.Errorf("nothing in the inventory has the label %q", label)
	}
	return 0, "", fmt.Errorf("the label %q fits %s", label, strings.Join(found, " and "))
}

// ids goes through the ids of all pieces or all slots.
func ids(d *model.Department, what byte) func(func(string) bool) {
	return func(yield func(string) bool) {
		if what == Piece {
			for i := range d.Items {
				if !yield(d.Items[i].ID) {
					return
				}
			}
			return
		}
		for i := range d.Slots {
			if !yield(d.Slots[i].ID) {
				return
			}
		}
	}
}
