//! Between the domain's types and those that are written.

use std::collections::BTreeMap;

/// A value that was written but can't be one of the domain's.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{found} is no {quantity}: {wanted}")]
pub struct OutOfRange {
    /// The quantity.
    pub quantity: &'static str,
    /// What was written.
    pub found: String,
    /// What can be.
    pub wanted: String,
}

/// A written type and the domain's type that it mirrors.
pub trait Mirror: Sized {
    /// The domain's type.
    type Of;

    /// As it is written.
    fn of(it: &Self::Of) -> Self;

    /// As the domain has it.
    ///
    /// # Errors
    /// [`OutOfRange`], where a value is none that the domain can hold.
    fn back(self) -> Result<Self::Of, OutOfRange>;
}

/// Whether a value is the one that an absent field is read as.
pub(crate) fn is_default<T: Default + PartialEq>(it: &T) -> bool {
    *it == T::default()
}

/// Both ways between a written type and the domain's. Every field and every variant is named, so
/// that one more in the domain does not compile until it is written too.
macro_rules! mirror {
    (struct $name:ident = $($of:ident)::+ { $($field:ident),* $(,)? }) => {
        impl $crate::mirror::Mirror for $name {
            type Of = $($of)::+;

            fn of(it: &Self::Of) -> Self {
                let $($of)::+ { $($field),* } = it;
                Self { $($field: $crate::mirror::Mirror::of($field)),* }
            }

            fn back(self) -> Result<Self::Of, $crate::mirror::OutOfRange> {
                let Self { $($field),* } = self;
                Ok($($of)::+ { $($field: $crate::mirror::Mirror::back($field)?),* })
            }
        }
    };
    (name $name:ident = $($of:ident)::+) => {
        impl $crate::mirror::Mirror for $name {
            type Of = $($of)::+;

            fn of(it: &Self::Of) -> Self {
                let $($of)::+(name) = it;
                Self(*name)
            }

            fn back(self) -> Result<Self::Of, $crate::mirror::OutOfRange> {
                let Self(name) = self;
                Ok($($of)::+(name))
            }
        }
    };
    (enum $name:ident = $($of:ident)::+ {
        $($variant:ident $(($it:ident))? $({ $($field:ident),* })?),* $(,)?
    }) => {
        impl $crate::mirror::Mirror for $name {
            type Of = $($of)::+;

            fn of(it: &Self::Of) -> Self {
                use $($of)::+ as Of;
                match it {
                    $(Of::$variant $(($it))? $({ $($field),* })? => {
                        Self::$variant
                            $(($crate::mirror::Mirror::of($it)))?
                            $({ $($field: $crate::mirror::Mirror::of($field)),* })?
                    })*
                }
            }

            fn back(self) -> Result<Self::Of, $crate::mirror::OutOfRange> {
                use $($of)::+ as Of;
                Ok(match self {
                    $(Self::$variant $(($it))? $({ $($field),* })? => {
                        Of::$variant
                            $(($crate::mirror::Mirror::back($it)?))?
                            $({ $($field: $crate::mirror::Mirror::back($field)?),* })?
                    })*
                })
            }
        }
    };
}

/// What is written as it is.
macro_rules! plain {
    ($($plain:ty),*) => {$(
        impl Mirror for $plain {
            type Of = Self;

            fn of(it: &Self) -> Self {
                it.clone()
            }

            fn back(self) -> Result<Self, OutOfRange> {
                Ok(self)
            }
        }
    )*};
}

plain!([u32; 4], bool, i16, i32, i64, u8, u16, u32, u64, [u16; 2], String);

impl<T: Mirror> Mirror for Option<T> {
    type Of = Option<T::Of>;

    fn of(it: &Self::Of) -> Self {
        it.as_ref().map(T::of)
    }

    fn back(self) -> Result<Self::Of, OutOfRange> {
        self.map(T::back).transpose()
    }
}

impl<T: Mirror> Mirror for Vec<T> {
    type Of = Vec<T::Of>;

    fn of(it: &Self::Of) -> Self {
        it.iter().map(T::of).collect()
    }

    fn back(self) -> Result<Self::Of, OutOfRange> {
        self.into_iter().map(T::back).collect()
    }
}

impl<T: Mirror> Mirror for Box<T> {
    type Of = Box<T::Of>;

    fn of(it: &Self::Of) -> Self {
        Self::new(T::of(it))
    }

    fn back(self) -> Result<Self::Of, OutOfRange> {
        (*self).back().map(Box::new)
    }
}

impl<K, T> Mirror for BTreeMap<K, T>
where
    K: Mirror + Ord,
    K::Of: Ord,
    T: Mirror,
{
    type Of = BTreeMap<K::Of, T::Of>;

    fn of(it: &Self::Of) -> Self {
        it.iter().map(|(key, value)| (K::of(key), T::of(value))).collect()
    }

    fn back(self) -> Result<Self::Of, OutOfRange> {
        self.into_iter().map(|(key, value)| Ok((key.back()?, value.back()?))).collect()
    }
}

impl<A: Mirror, B: Mirror> Mirror for (A, B) {
    type Of = (A::Of, B::Of);

    fn of(it: &Self::Of) -> Self {
        (A::of(&it.0), B::of(&it.1))
    }

    fn back(self) -> Result<Self::Of, OutOfRange> {
        Ok((self.0.back()?, self.1.back()?))
    }
}

impl<A: Mirror, B: Mirror, C: Mirror> Mirror for (A, B, C) {
    type Of = (A::Of, B::Of, C::Of);

    fn of(it: &Self::Of) -> Self {
        (A::of(&it.0), B::of(&it.1), C::of(&it.2))
    }

    fn back(self) -> Result<Self::Of, OutOfRange> {
        Ok((self.0.back()?, self.1.back()?, self.2.back()?))
    }
}
