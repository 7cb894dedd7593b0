// Package ui is what a person sees and touches. It is handed pictures of the
// board and calls verbs on it; what equipment does is decided in model.
//
// One file a screen. A file that ends in _view.go makes plain values from a
// picture, without a widget in it: that is where most tests look.
package ui
