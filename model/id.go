package model

import "github.com/google/uuid"

// NewID makes a UUIDv7 of a moment in Unix milliseconds and ten random bytes.
//
// Source: RFC 9562, section 5.7.
func NewID(ms int64, random [10]byte) uuid.UUID {
	var id uuid.UUID
	for i := range 6 {
		id[i] = byte(ms >> (40 - 8*i))
	}
	copy(id[6:], random[:])
	id[6] = id[6]&0x0f | 0x70
	id[8] = id[8]&0x3f | 0x80
	return id
}
