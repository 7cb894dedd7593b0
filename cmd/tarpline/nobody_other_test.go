//go:build !linux

package main

import "testing"

// asNobody runs f as whoever runs the tests: not root, outside Linux.
func asNobody(_ *testing.T, _ string, f func()) { f() }
