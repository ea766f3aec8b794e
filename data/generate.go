package data

//go:generate go run ./compile
