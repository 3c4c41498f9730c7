//! Where entries and photos are kept.
