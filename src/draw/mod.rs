//! Pure display lists.
