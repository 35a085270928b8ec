//! A skin of triangles.

use bevy::math::{Affine3A, Vec3};

/// A skin of triangles, each seen from outside counter-clockwise. Faces that share a corner by its number belong
/// together when edges are looked for and normals are smoothed.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Solid {
    /// Corners [m].
    pub corners: Vec<Vec3>,
    /// Triangles, by the numbers of their corners.
    pub faces: Vec<[u32; 3]>,
}

/// A solid with normals, three corners of its own for each triangle.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Shaded {
    /// Corners [m].
    pub corners: Vec<[f32; 3]>,
    /// Normals, of length one.
    pub normals: Vec<[f32; 3]>,
}

/// Faces that meet at less than this are one rounded surface: the cosine of 40 degrees.
pub(super) const CREASE_COSINE: f32 = 0.766;

impl Solid {
    /// This solid and another, as one.
    #[must_use]
    pub fn and(mut self, other: Self) -> Self {
        self.add(other);
        self
    }

    /// Puts another solid to this one.
    #[expect(clippy::cast_possible_truncation, reason = "a part has some thousand corners")]
    pub fn add(&mut self, other: Self) {
        let before = self.corners.len() as u32;
        self.corners.extend(other.corners);
        self.faces.extend(other.faces.into_iter().map(|face| face.map(|corner| corner + before)));
    }

    /// The solid elsewhere. The move must not mirror it.
    #[must_use]
    pub fn moved(mut self, by: Affine3A) -> Self {
        for corner in &mut self.corners {
            *corner = by.transform_point3(*corner);
        }
        self
    }

    /// The solid shifted.
    #[must_use]
    pub fn at(self, x: f32, y: f32, z: f32) -> Self {
        self.moved(Affine3A::from_translation(Vec3::new(x, y, z)))
    }

    /// The solid turned about the x axis, `y` towards `z` [degrees].
    #[must_use]
    pub fn turned_x(self, degrees: f32) -> Self {
        self.moved(Affine3A::from_rotation_x(degrees.to_radians()))
    }

    /// The solid turned about the upright axis, `z` towards `x` [degrees].
    #[must_use]
    pub fn turned_y(self, degrees: f32) -> Self {
        self.moved(Affine3A::from_rotation_y(degrees.to_radians()))
    }

    /// The solid turned about the z axis, `x` towards `y` [degrees].
    #[must_use]
    pub fn turned_z(self, degrees: f32) -> Self {
        self.moved(Affine3A::from_rotation_z(degrees.to_radians()))
    }

    /// The corners of a triangle.
    #[must_use]
    pub fn triangle(&self, face: [u32; 3]) -> [Vec3; 3] {
        face.map(|corner| self.corners[corner as usize])
    }

    /// Twice the area of each face, in the direction of its normal.
    pub(super) fn face_normals(&self) -> Vec<Vec3> {
        let normal = |face: &[u32; 3]| {
            let [a, b, c] = self.triangle(*face);
            (b - a).cross(c - a)
        };
        self.faces.iter().map(normal).collect()
    }

    /// The solid with normals that are smooth but for its creases.
    #[must_use]
    pub fn shaded(&self) -> Shaded {
        let normals = self.face_normals();
        let mut at_corner = vec![Vec::new(); self.corners.len()];
        for (number, face) in self.faces.iter().enumerate() {
            for corner in face {
                at_corner[*corner as usize].push(number);
            }
        }
        let mut shaded = Shaded::default();
        for (face, own) in self.faces.iter().zip(&normals) {
            if own.length_squared() < f32::MIN_POSITIVE {
                continue;
            }
            let own = own.normalize();
            for corner in face {
                let beside = at_corner[*corner as usize].iter().map(|number| normals[*number]);
                let alike = beside.filter(|other| other.dot(own) >= CREASE_COSINE * other.length());
                shaded.corners.push(self.corners[*corner as usize].to_array());
                shaded.normals.push(alike.sum::<Vec3>().normalize_or(own).to_array());
            }
        }
        shaded
    }

    /// Least and greatest corner [m]; both at the origin for an empty solid.
    #[must_use]
    pub fn bounds(&self) -> [Vec3; 2] {
        let mut corners = self.corners.iter().copied();
        let Some(first) = corners.next() else { return [Vec3::ZERO; 2] };
        corners.fold([first, first], |[least, most], corner| [least.min(corner), most.max(corner)])
    }
}
